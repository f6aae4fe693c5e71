package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;

/** What a workshop writes down of a job, and what it is told of what it did not. */
class JobFileTest {
  private static final String WHOLE =
      """
      name = "Tank \\"A\\", fitted"
      coolant_mix = "50/50 glycol and water"
      changed_too = "nothing"
      old_core_cleaned = true
      air_conditioning = "off"
      fan_engaged = "no"
      fuel = "the same tank"
      wind = "indoors"
      fan_type = "axial, 1.1 m"
      fan_distance_m = 1.25
      grille_before_degC = 21
      grille_after_degC = 25
      roller_load = "540 N.m at the crankshaft"
      roller_speed_km_h = 79.2

      [before]
      calibration_id = "K-17"

      [after]
      calibration_id = "K-17"

      [[run]]
      source = "pull"
      at_s = 60
      probe_degC = 20.5
      wind = "door open"

      [[run]]
      source = "other"
      left_out = "belt slipped"
      """;

  private static final PlantTrip PULL =
      PlantTrip.onRollers(1).rollers(30, 0.15).rollers(90, 0.85).rollers(60, 0.15);

  @TempDir Path folder;

  @Test
  void whatIsWrittenComesBackTheSame() throws Exception {
    Job job = JobFile.parse(WHOLE, "job.toml");

    assertThat(job.name()).isEqualTo("Tank \"A\", fitted");
    assertThat(job.answer(Asked.CALIBRATION_ID, Side.AFTER)).contains("K-17");
    assertThat(job.answer(Asked.FAN_DISTANCE, Side.BEFORE)).contains("1.25");
    assertThat(job.runs()).hasSize(2);
    assertThat(JobFile.parse(JobFile.write(job), "again")).isEqualTo(job);
  }

  /** What the README shows is what the program reads, and it shows all of it. */
  @Test
  void theReadmesExampleIsAJobThatAnswersEverything() throws Exception {
    String readme = Files.readString(Path.of("..", "README.md"));
    String toml = readme.substring(readme.indexOf("    name = \"Second radiator\""));
    toml = toml.substring(0, toml.indexOf("`source` is"));

    Job job = JobFile.parse(toml, "README");

    assertThat(job.runs()).hasSize(2);
    for (Asked asked : Asked.values()) {
      assertThat(job.answer(asked, Side.BEFORE)).as(asked.id()).isPresent();
    }
  }

  @Test
  void everyFaultIsToldAtItsPlace() {
    String faulty =
        """
        coolant_mixx = "50/50"
        fan_distance_m = "near"
        [[run]]
        at_s = 10
        """;

    assertThatThrownBy(() -> JobFile.parse(faulty, "job.toml"))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("job.toml, line 1, column 1: expected one of name, before")
        .hasMessageContaining("Did you mean coolant_mix?")
        .hasMessageContaining(
            "line 2, column 1: expected fan_distance_m = a number from -60 to 500, found \"near\"")
        .hasMessageContaining("line 4, column 1: expected source")
        .hasMessageEndingWith("Nothing was compared; correct the file.");
  }

  @Test
  void aFileThatIsNoTomlOrNotThereIsRefusedInFourParts() throws Exception {
    Path file = Files.writeString(folder.resolve("job.toml"), "coolant_mix = 50/50\n");

    assertThatThrownBy(() -> JobFile.read(file))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("line 1, column");
    assertThatThrownBy(() -> JobFile.read(folder.resolve("absent.toml")))
        .hasMessageMatching(
            "Could not read the job .*absent\\.toml: expected TOML in UTF-8, found no such file\\."
                + " Check the path\\.");
  }

  @Test
  void anAnsweredJobLeavesNothingOpen() throws Exception {
    RunSet set = runs(WHOLE);

    assertThat(set.runs()).hasSize(1);
    assertThat(set.caveats()).noneMatch(words -> words.startsWith("Nobody noted"));
    assertThat(set.caveats()).noneMatch(words -> words.contains("calibration"));
  }

  @Test
  void whatNobodyNotedIsACaveat() throws Exception {
    RunSet set = runs(WHOLE.replaceAll("(?m)^(wind|roller_load) = .*\n", ""));

    assertThat(set.caveats())
        .contains(
            "Nobody noted the wind, the load of the rollers; each may have made a part of a"
                + " difference.");
  }

  @Test
  void anotherCalibrationMakesTorqueIncomparable() throws Exception {
    Job job = JobFile.parse(WHOLE.replaceFirst("K-17", "K-16"), "job.toml");

    assertThat(sides(pull(), pull(), job).caveats()).contains(CHANGED);
    assertThat(sides(pull(), pull(), JobFile.parse(WHOLE, "job.toml")).caveats())
        .noneMatch(words -> words.startsWith("The calibration"));
  }

  private static final String CHANGED =
      "The calibration was changed (K-16, then K-17): the engine's own torque is not comparable.";

  /** A trip that tells its calibration need not be asked. */
  @Test
  void theTripsOwnCalibrationsCount() {
    TripSeconds before = PlantTrip.of("first", PULL.samples(), "K-16");
    TripSeconds after = PlantTrip.of("second", PULL.samples(), "K-17");

    List<String> caveats = sides(before, after, Job.NONE).caveats();

    assertThat(caveats).contains(CHANGED);
    assertThat(caveats).noneMatch(words -> words.contains("calibration id"));
  }

  @Test
  void airThatComesRoundToTheGrilleIsSaid() throws Exception {
    assertThat(runs(WHOLE).caveats())
        .contains(
            "The air at the grille rose by up to 4 K in a run: it comes round to the front and"
                + " warms the later seconds.");
    assertThat(runs(WHOLE.replace("grille_after_degC = 25", "grille_after_degC = 24")).caveats())
        .noneMatch(words -> words.startsWith("The air at the grille"));
  }

  /** On rollers the air is what came to the grille, unless a probe told better. */
  @Test
  void theAirAtTheGrilleStandsForOutside() throws Exception {
    Run probed = runs(WHOLE).runs().getFirst();
    Run read = runs(WHOLE.replace("probe_degC = 20.5\n", "")).runs().getFirst();

    assertThat(probed.start().outsideCelsius()).hasValue(20.5);
    assertThat(read.start().outsideCelsius()).hasValue(23);
  }

  private static RunSet runs(String job) throws JobException {
    return RunFinding.of(
        List.of(PlantTrip.before(pull())),
        Channels.CHARGE_AIR_TEMP_OUT,
        JobFile.parse(job, "job.toml"));
  }

  private static RunSet sides(TripSeconds before, TripSeconds after, Job job) {
    return RunFinding.of(
        List.of(PlantTrip.before(before), PlantTrip.after(after)),
        Channels.CHARGE_AIR_TEMP_OUT,
        job);
  }

  private static TripSeconds pull() {
    return PULL.read("pull");
  }
}
