package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.compare.RunStart.Known;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;

/** Runs as they come out of trips, and why some do not take part. */
class RunFindingTest {
  private static final TripSeconds PULL = pull(0.85, 30, 1).read("pull");

  private static PlantTrip pull(double share, double chargeCoolant, long seed) {
    return PlantTrip.onRollers(Rig.usual(), 21, chargeCoolant, seed)
        .rollers(30, 0.15)
        .rollers(120, share)
        .rollers(120, 0.15);
  }

  private static RunSet runs(TripSeconds before, TripSeconds after) {
    return RunFinding.of(
        List.of(PlantTrip.before(before), PlantTrip.after(after)),
        Channels.CHARGE_AIR_TEMP_OUT,
        Job.NONE);
  }

  @Test
  void aRunTellsItsStartAndWhatCameAfter() {
    Run run = runs(PULL, PULL).runs().getFirst();

    assertThat(run.onsetSeconds()).isCloseTo(30, within(2.0));
    assertThat(run.loadSeconds()).isCloseTo(120, within(2));
    assertThat(run.ground()).isEqualTo(Run.Ground.ROLLERS);
    assertThat(run.start().gear()).isEqualTo(OptionalInt.of(PlantTrip.GEAR));
    assertThat(run.start().converter()).isEqualTo(Known.YES);
    assertThat(run.start().airConditioning()).isEqualTo(Known.UNKNOWN);
    assertThat(run.start().secondsSinceLastPull()).isEmpty();
    assertThat(run.start().temperaturesCelsius().get(Channels.CHARGE_COOLANT_TEMP))
        .isCloseTo(30, within(1.5));
    assertThat(run.series().firstSecond()).isEqualTo((int) -run.onsetSeconds());
    assertThat(run.series().at(Channels.CHARGE_COOLANT_TEMP, run.loadSeconds() + 100)).isPresent();
  }

  @Test
  void theTimeSinceTheLastPullIsTold() {
    TripSeconds trip =
        PlantTrip.onRollers(2)
            .rollers(60, 0.15)
            .rollers(90, 0.85)
            .rollers(200, 0.15)
            .rollers(90, 0.85)
            .rollers(60, 0.15)
            .read("two");

    List<Run> found = runs(trip, trip).of(Side.BEFORE);

    assertThat(found.getLast().start().secondsSinceLastPull().orElse(0))
        .isCloseTo(200, within(3.0));
    assertThat(found.getFirst().series().endSecond()).isLessThanOrEqualTo(290);
  }

  /** Issue 7's own example of what cannot be compared. */
  @Test
  void aSideThatNeverHeldTheLoadIsSaidInFigures() {
    RunSet set = runs(PULL, pull(0.6, 30, 2).read("weak"));

    assertThat(set.of(Side.AFTER)).isEmpty();
    assertThat(set.rejected())
        .singleElement()
        .satisfies(
            rejected ->
                assertThat(rejected.reason()).contains("Pulled 98 kW").contains("30 % apart"));
    assertThat(set.caveats())
        .anyMatch(
            words ->
                words.matches(
                    "The after runs never held 5[2-5]\\d N\\.m for 60 s: the nearest was 3[78]\\d"
                        + " N\\.m\\."));
    assertThat(set.load()).isEmpty();
  }

  @Test
  void aMismatchThatIsComparedIsKeptInKilowattsAndPercent() {
    RunSet set = runs(PULL, pull(0.79, 30, 3).read("less"));

    LoadMatch match = set.load().orElseThrow();
    assertThat(match.windowSeconds())
        .isEqualTo(set.runs().stream().mapToInt(Run::heldSeconds).min().orElseThrow())
        .isGreaterThan(90);
    assertThat(match.mismatchPercent()).isCloseTo(-7, within(1.0));
    assertThat(match.mismatchKilowatts())
        .isCloseTo(match.afterKilowatts() - match.beforeKilowatts(), within(1e-9));
    assertThat(set.caveats()).anyMatch(words -> words.contains("less than those before"));
  }

  @Test
  void startsWithinThreeKelvinAreNotMentioned() {
    RunSet set = runs(PULL, pull(0.85, 32, 4).read("alike"));

    assertThat(set.runs()).hasSize(2);
    assertThat(set.caveats()).noneMatch(words -> words.startsWith("Starts differ"));
  }

  @Test
  void startsThatAreModelledAreSaid() {
    RunSet set = runs(PULL, pull(0.85, 42, 5).read("warmer"));

    assertThat(set.runs()).hasSize(2);
    assertThat(set.caveats()).anyMatch(words -> words.startsWith("Starts differ: charge coolant"));
  }

  @Test
  void startsThatAreTooFarApartAreRefusedWithFigures() {
    TripSeconds hot = pull(0.85, 55, 6).read("hot");

    RunSet set =
        RunFinding.of(
            List.of(PlantTrip.before(PULL), PlantTrip.before(PULL), PlantTrip.after(hot)),
            Channels.CHARGE_AIR_TEMP_OUT,
            Job.NONE);

    assertThat(set.of(Side.AFTER)).isEmpty();
    assertThat(set.rejected().getFirst().reason())
        .matches("Began with charge coolant at 3\\d K above outside.*more than 10 K apart\\.");
  }

  /**
   * Charge air counts above outside air: a hotter day with a coolant as much hotter began alike.
   */
  @Test
  void chargeCoolantStartsCountAboveOutsideAir() {
    TripSeconds hotDay =
        PlantTrip.onRollers(Rig.usual(), 33, 42, 7)
            .rollers(30, 0.15)
            .rollers(120, 0.85)
            .rollers(60, 0.15)
            .read("hot day");

    RunSet set = runs(PULL, hotDay);

    assertThat(set.runs()).hasSize(2);
    assertThat(set.caveats()).noneMatch(words -> words.startsWith("Starts differ"));
  }

  @Test
  void aRunWithRegenerationIsLeftOutWithTheReason() {
    PlantTrip trip = PlantTrip.onRollers(8).rollers(30, 0.15);
    for (int second = 0; second < 120; second++) {
      trip.tell(Channels.FILTER_REGENERATION, second > 100 ? 1 : 0).rollers(1, 0.85);
    }
    trip.rollers(60, 0.15);

    RunSet set = runs(PULL, trip.read("burning"));

    assertThat(set.of(Side.AFTER)).isEmpty();
    assertThat(set.rejected().getFirst().reason()).contains("regenerated");
  }

  @Test
  void aChannelThatWasSilentIsNotCompared() {
    TripSeconds silent =
        pull(0.85, 30, 9)
            .read(
                "silent",
                sample ->
                    !sample.channel().equals(Channels.CHARGE_AIR_TEMP_OUT)
                        || sample.timeMicros() < 90_000_000,
                0);

    RunSet set = runs(PULL, silent);

    assertThat(set.rejected().getFirst().reason())
        .matches("charge air was heard in \\d\\d of 1\\d\\d s; four in five are needed\\.");
  }

  @Test
  void aTripWithoutALoadSaysWhatTheMostWas() {
    RunSet set = runs(PULL, PlantTrip.onRollers(10).rollers(200, 0.12).read("idle"));

    assertThat(set.rejected().getFirst().reason())
        .matches("No load of 25 kW or more was held for 30 s; the most was 20 kW\\.");
    assertThat(set.rejected().getFirst().onsetSeconds()).isZero();
  }

  @Test
  void aPartOfATripIsTakenAlone() {
    TripSeconds trip =
        PlantTrip.onRollers(11)
            .rollers(60, 0.15)
            .rollers(90, 0.85)
            .rollers(120, 0.15)
            .rollers(90, 0.85)
            .rollers(60, 0.15)
            .read("two");
    TripPart part = TripPart.parse("two@250-420");
    RunSource source = new RunSource(trip, Side.BEFORE, 0, part.span());

    RunSet set = RunFinding.of(List.of(source), Channels.CHARGE_AIR_TEMP_OUT, Job.NONE);

    assertThat(part.what()).isEqualTo("two");
    assertThat(set.runs())
        .singleElement()
        .satisfies(run -> assertThat(run.onsetSeconds()).isCloseTo(270, within(2.0)));
  }

  @Test
  void aPartWithoutALoadNamesThoseOfTheTrip() {
    RunSource source =
        new RunSource(PULL, Side.BEFORE, 0, Optional.of(new TripPart.Span(200, 260)));

    RunSet set = RunFinding.of(List.of(source), Channels.CHARGE_AIR_TEMP_OUT, Job.NONE);

    assertThat(set.rejected().getFirst().reason())
        .matches("Between 200 s and 260 s no load lasts 30 s; the trip has loads from .*");
  }

  /** A derate is what a comparison is about: the run goes on, its equal-load window ends there. */
  @Test
  void aDerateEndsTheEqualLoadAndNotTheRun() {
    TripSeconds derating =
        PlantTrip.onRollers(Rig.usual().with(RigTrait.DERATE_CHARGE_COOLANT_DEGC, 44), 21, 30, 12)
            .rollers(30, 0.15)
            .rollers(240, 0.9)
            .rollers(60, 0.15)
            .read("derating");
    TripSeconds holding =
        PlantTrip.onRollers(13).rollers(30, 0.15).rollers(240, 0.9).rollers(60, 0.15).read("holds");

    RunSet set = runs(derating, holding);

    assertThat(set.runs()).hasSize(2);
    assertThat(set.of(Side.BEFORE).getFirst().loadSeconds()).isCloseTo(240, within(3));
    assertThat(set.of(Side.AFTER).getFirst().heldSeconds()).isBetween(60, 220);
  }

  /**
   * Repeats whose starts lie within 3 K agree within 2 K (coolant), 3 K (charge air) and 2 %
   * (torque): common practice, no source.
   */
  @Test
  void repeatsWithLikeStartsAgree() {
    Run one = runs(PULL, PULL).runs().getFirst();
    Run other = runs(pull(0.85, 32, 21).read("again"), PULL).runs().getFirst();

    for (int second : new int[] {15, 30, 60, 90, 115}) {
      assertThat(at(one, Channels.ENGINE_COOLANT_TEMP, second))
          .isCloseTo(at(other, Channels.ENGINE_COOLANT_TEMP, second), within(2.0));
      assertThat(at(one, Channels.CHARGE_AIR_TEMP_OUT, second))
          .isCloseTo(at(other, Channels.CHARGE_AIR_TEMP_OUT, second), within(3.0));
      assertThat(at(one, Channels.DELIVERED_TORQUE, second))
          .isCloseTo(at(other, Channels.DELIVERED_TORQUE, second), within(2.0));
    }
  }

  private static double at(Run run, Channel channel, int second) {
    return run.series().at(channel, second).orElseThrow();
  }

  @Test
  void whatSomebodySaidOfARunIsKeptWithIt() {
    Job job =
        new Job(
            "tank",
            Map.of(Asked.AIR_CONDITIONING, "off", Asked.WIND, "calm"),
            Map.of(),
            Map.of(),
            List.of(
                new Job.OfRun(
                    "pull",
                    OptionalDouble.of(100),
                    Map.of(Asked.WIND, "door open"),
                    OptionalDouble.of(19.5),
                    Optional.empty())));

    Run run =
        RunFinding.of(List.of(PlantTrip.before(PULL)), Channels.CHARGE_AIR_TEMP_OUT, job)
            .runs()
            .getFirst();

    assertThat(run.notes().words()).containsEntry("wind", "door open");
    assertThat(run.start().airConditioning()).isEqualTo(Known.NO);
    assertThat(run.start().outsideCelsius()).hasValue(19.5);
  }

  @Test
  void aRunThatSomebodyLeavesOutIsListedWithHisReason() {
    Job.OfRun said =
        new Job.OfRun(
            "pu",
            OptionalDouble.empty(),
            Map.of(),
            OptionalDouble.empty(),
            Optional.of("belt slipped"));
    Job job = new Job("", Map.of(), Map.of(), Map.of(), List.of(said));

    RunSet set = RunFinding.of(List.of(PlantTrip.before(PULL)), Channels.CHARGE_AIR_TEMP_OUT, job);

    assertThat(set.runs()).isEmpty();
    assertThat(set.rejected().getFirst().reason()).isEqualTo("belt slipped");
  }

  @Test
  void aClimbOnTheRoadIsARun() {
    PlantTrip trip = PlantTrip.onRollers(31).road(120, 0.0, PlantTrip.ROLLERS);
    trip.road(200, 0.05, PlantTrip.ROLLERS).road(120, 0.0, PlantTrip.ROLLERS);

    Run run =
        RunFinding.of(
                List.of(PlantTrip.before(trip.read("climb"))),
                Channels.CHARGE_COOLANT_TEMP,
                Job.NONE)
            .runs()
            .getFirst();

    assertThat(run.onsetSeconds()).isCloseTo(120, within(4.0));
    assertThat(run.loadSeconds()).isCloseTo(200, within(8));
  }

  /** Half of the torque is taken away, and still it is the same pull. */
  @Test
  void aDeepDerateDoesNotEndTheRunEither() {
    Rig weak =
        Rig.usual()
            .with(RigTrait.DERATE_CHARGE_COOLANT_DEGC, 40)
            .with(RigTrait.DERATE_SHARE_PER_K, 0.3)
            .with(RigTrait.DERATE_FLOOR, 0.35);
    TripSeconds derating =
        PlantTrip.onRollers(weak, 21, 30, 14)
            .rollers(30, 0.15)
            .rollers(240, 0.9)
            .rollers(60, 0.15)
            .read("deep");

    ProposedRun found = RunFinding.propose(derating).getFirst();

    assertThat(found.endSeconds() - found.onsetSeconds()).isCloseTo(240, within(4.0));
  }

  @Test
  void whatWasSaidOfOneRunGoesBeforeWhatWasSaidOfItsTrip() {
    Job.OfRun one =
        new Job.OfRun(
            "pull",
            OptionalDouble.of(60),
            Map.of(Asked.WIND, "door open"),
            OptionalDouble.empty(),
            Optional.empty());
    Job.OfRun trip =
        new Job.OfRun(
            "pull",
            OptionalDouble.empty(),
            Map.of(Asked.WIND, "calm"),
            OptionalDouble.empty(),
            Optional.empty());
    Job job = new Job("", Map.of(), Map.of(), Map.of(), List.of(one, trip));

    Run run =
        RunFinding.of(List.of(PlantTrip.before(PULL)), Channels.CHARGE_AIR_TEMP_OUT, job)
            .runs()
            .getFirst();

    assertThat(run.notes().words()).containsEntry("wind", "door open");
  }

  @Test
  void loadsThatAreNotToldByTorqueAreSaid() {
    TripSeconds fuel =
        pull(0.85, 30, 15)
            .read("fuel", sample -> !sample.channel().equals(Channels.DELIVERED_TORQUE), 0);

    RunSet set =
        RunFinding.of(List.of(PlantTrip.before(fuel)), Channels.CHARGE_AIR_TEMP_OUT, Job.NONE);

    assertThat(set.caveats()).contains("Loads were told by the fuel burnt.");
    assertThat(runs(PULL, PULL).caveats()).noneMatch(words -> words.startsWith("Loads were"));
  }

  /** A trip with a short pull and a long one, before and after: the pairs are compared. */
  @Test
  void ofTwoLoadsTheOneThatMostRunsShareIsCompared() {
    PlantTrip trip = PlantTrip.onRollers(16).rollers(60, 0.15).rollers(60, 0.62);
    trip.rollers(300, 0.15).rollers(120, 0.9).rollers(60, 0.15);
    TripSeconds both = trip.read("both");

    RunSet set = runs(both, both);

    assertThat(set.runs())
        .hasSize(2)
        .allSatisfy(run -> assertThat((double) run.loadSeconds()).isCloseTo(120, within(3.0)));
    assertThat(set.rejected()).hasSize(2);
    assertThat(set.caveats()).noneMatch(words -> words.startsWith("The"));
  }

  /** About the same energy over a minute, spent otherwise. */
  @Test
  void aLoadThatOnlyInTheMeanIsLikeTheOthersIsRefused() {
    TripSeconds wavy =
        PlantTrip.onRollers(18)
            .rollers(30, 0.15)
            .rollers(24, 1.0)
            .rollers(36, 0.62)
            .rollers(60, 0.85)
            .rollers(60, 0.15)
            .read("wavy");

    RunSet set = runs(PULL, wavy);

    assertThat(set.of(Side.AFTER)).isEmpty();
    assertThat(set.rejected().getFirst().reason())
        .matches("The load was like that of the others for \\d+ s only; 30 s are needed\\.");
  }

  /** A link that was lost under load hides how long it had been on. */
  @Test
  void aRunThatCameOutOfASilenceIsRefused() {
    TripSeconds lost =
        PlantTrip.onRollers(19)
            .rollers(30, 0.15)
            .rollers(150, 0.85)
            .rollers(60, 0.15)
            .read(
                "lost",
                sample -> sample.timeMicros() < 20_000_000 || sample.timeMicros() > 60_000_000,
                0);

    RunSet set = runs(PULL, lost);

    assertThat(set.of(Side.AFTER)).isEmpty();
    assertThat(set.rejected().getFirst().reason())
        .isEqualTo("The load was on when it was first heard, so nobody knows since when.");
  }

  /** A silence within a pull ends it; what comes after is no pull of its own. */
  @Test
  void aSilenceWithinAPullEndsIt() {
    TripSeconds broken =
        PlantTrip.onRollers(20)
            .rollers(30, 0.15)
            .rollers(200, 0.85)
            .rollers(60, 0.15)
            .read(
                "broken",
                sample -> sample.timeMicros() < 120_000_000 || sample.timeMicros() > 150_000_000,
                0);

    RunSet set = runs(PULL, broken);

    assertThat(set.of(Side.AFTER)).hasSize(1);
    assertThat((double) set.of(Side.AFTER).getFirst().loadSeconds()).isCloseTo(90, within(3.0));
    assertThat(set.rejected()).hasSize(1);
  }

  @Test
  void aPartThatBeginsUnderLoadIsTakenAndSaid() {
    RunSource source = new RunSource(PULL, Side.BEFORE, 0, Optional.of(new TripPart.Span(60, 140)));

    RunSet set = RunFinding.of(List.of(source), Channels.CHARGE_AIR_TEMP_OUT, Job.NONE);

    assertThat(set.runs())
        .singleElement()
        .satisfies(run -> assertThat(run.onsetSeconds()).isEqualTo(60));
    assertThat(set.caveats())
        .anyMatch(words -> words.startsWith("1 of 1 runs begin in the middle"));
  }

  @Test
  void onlyAPlainAnswerSaysWhetherTheAirConditioningWasOn() {
    assertThat(airConditioning("off")).isEqualTo(Known.NO);
    assertThat(airConditioning("Off, all day")).isEqualTo(Known.NO);
    assertThat(airConditioning("false")).isEqualTo(Known.NO);
    assertThat(airConditioning("an")).isEqualTo(Known.YES);
    assertThat(airConditioning("normal")).isEqualTo(Known.UNKNOWN);
    assertThat(airConditioning("?")).isEqualTo(Known.UNKNOWN);
  }

  private static Known airConditioning(String answer) {
    Job job = new Job("", Map.of(Asked.AIR_CONDITIONING, answer), Map.of(), Map.of(), List.of());
    return RunFinding.of(List.of(PlantTrip.before(PULL)), Channels.CHARGE_AIR_TEMP_OUT, job)
        .runs()
        .getFirst()
        .start()
        .airConditioning();
  }
}
