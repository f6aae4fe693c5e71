package steadypull.vehicle;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What was fitted decides which trips count for what. */
class ConfigurationTest {
  private static final HeatQuantity CONDUCTANCE =
      new HeatQuantity(
          "charge_coolant.conductance_W_per_K", Circuit.CHARGE_AIR, true, Math.log(300), 0.8);
  private static final HeatQuantity OIL =
      new HeatQuantity("engine_oil.lag_s", Circuit.ENGINE_OIL, true, Math.log(240), 0.4);
  private static final Instant START = Instant.parse("2026-05-01T08:00:00Z");
  private static final Instant FITTED = START.plus(Duration.ofDays(10));
  private static final Configuration COOLER =
      new Configuration(
          "second charge cooler", FITTED, Set.of(Circuit.CHARGE_AIR), LearntHeat.NOTHING);

  private static LessonOfTrip lesson(int day, double conductance) {
    return new LessonOfTrip(
        START.plus(Duration.ofDays(day)),
        new TripHeat(
            0.8,
            List.of(
                new HeatTold(CONDUCTANCE, Math.log(conductance), 0.05),
                new HeatTold(OIL, Math.log(200), 0.05)),
            List.of()));
  }

  private static LearntQuantity of(Configuration configuration, HeatQuantity quantity) {
    return configuration.learnt().of(quantity.id()).orElseThrow();
  }

  @Test
  void tripsBeforeAFittingAndAfterItCountEachForItsOwn() {
    List<Configuration> taught =
        Configuration.taught(
            List.of(Configuration.FIRST, COOLER),
            List.of(lesson(1, 400), lesson(3, 400), lesson(12, 800), lesson(14, 800)));

    assertThat(of(taught.get(0), CONDUCTANCE).trips()).isEqualTo(2);
    assertThat(Math.exp(of(taught.get(0), CONDUCTANCE).mean())).isBetween(370.0, 410.0);
    assertThat(Math.exp(of(taught.get(1), CONDUCTANCE).mean())).isBetween(700.0, 810.0);
    assertThat(of(taught.get(1), CONDUCTANCE).trips()).isEqualTo(2);
    assertThat(of(taught.get(1), OIL).trips()).as("a cooler leaves the oil alone").isEqualTo(4);
  }

  @Test
  void aTripSetsOutWithWhatTripsBeforeItTaughtAndNothingLater() {
    List<LessonOfTrip> lessons = List.of(lesson(1, 400), lesson(3, 400), lesson(12, 800));
    List<Configuration> kept = List.of(Configuration.FIRST, COOLER);

    List<Configuration> early =
        Configuration.settingOut(kept, lessons, START.plus(Duration.ofDays(2)));
    List<Configuration> fitted = Configuration.settingOut(kept, lessons, FITTED);

    assertThat(early).hasSize(1);
    assertThat(of(early.getFirst(), CONDUCTANCE).trips()).isEqualTo(1);
    assertThat(fitted.getFirst().fitted()).isEqualTo("second charge cooler");
    assertThat(of(fitted.getFirst(), CONDUCTANCE).trips()).isZero();
    assertThat(of(fitted.getFirst(), CONDUCTANCE).spread()).isEqualTo(0.8);
    assertThat(Configuration.settingOut(List.of(), lessons, START)).isEmpty();
  }

  /** A vehicle's file that is read back where it came from counts no trip twice. */
  @Test
  void whatAFileBroughtStandsForTheTripsThatTaughtIt() {
    List<LessonOfTrip> lessons = List.of(lesson(1, 400), lesson(3, 420));
    List<Configuration> brought = Configuration.taught(List.of(), lessons);

    assertThat(Configuration.taught(brought, lessons)).isEqualTo(brought);

    List<LessonOfTrip> more = new ArrayList<>(lessons);
    more.add(lesson(5, 410));
    assertThat(of(Configuration.taught(brought, more).getFirst(), CONDUCTANCE).trips())
        .isEqualTo(3);
  }

  @ParameterizedTest
  @CsvSource({
    "second charge cooler, charge-air",
    "4.9 L more coolant in the charge circuit, charge-air",
    "bigger intercooler and a stronger fan, charge-air engine-coolant gearbox",
    "engine oil cooler, engine-coolant engine-oil",
    "gearbox oil cooler, gearbox",
    "new radiator, engine-coolant gearbox",
    "Exhaust, compressor exhaust",
    "red paint, all"
  })
  void theWordsOfAFittingTellWhatItTouches(String words, String expected) {
    Set<Circuit> circuits = EnumSet.noneOf(Circuit.class);
    if (expected.equals("all")) {
      circuits = EnumSet.allOf(Circuit.class);
    } else {
      for (String word : expected.split(" ", -1)) {
        Circuit.of(word).ifPresent(circuits::add);
      }
    }
    assertThat(Fitting.touched(words)).isEqualTo(circuits);
  }

  /** Bit for bit, or a replay would not begin as the drive did. */
  @Test
  void configurationsTravelWithTheVehiclesFile() throws Exception {
    List<Configuration> taught =
        Configuration.taught(
            List.of(Configuration.FIRST, COOLER),
            List.of(lesson(1, 400), lesson(3, 377), lesson(12, 800), lesson(13, 100)));
    assertThat(of(taught.getLast(), CONDUCTANCE).against()).isPresent();
    Vehicle vehicle =
        Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR).withConfigurations(taught);

    assertThat(VehicleJson.read(VehicleJson.write(vehicle), "there")).isEqualTo(vehicle);
    TripHeat told =
        lesson(1, 433)
            .heat()
            .withDerates(
                List.of(
                    new DerateBegun("charge_coolant_temp", 98, List.of("charge_air_temp_out"))));
    assertThat(HeatJson.readTrip(HeatJson.write(told))).isEqualTo(told);
    assertThat(HeatJson.readLearnt(HeatJson.write(taught.getLast().learnt())))
        .isEqualTo(taught.getLast().learnt());
    assertThat(HeatJson.write(TripHeat.NOTHING)).isEmpty();
    assertThat(HeatJson.readTrip("")).isEqualTo(TripHeat.NOTHING);
  }

  @ParameterizedTest
  @CsvSource({
    "'\"logarithmic\" : true', '\"logarithmic\" : 1', true or false",
    "'\"circuit\" : \"charge-air\"', '\"circuit\" : \"hood\"', one of charge-air",
    "'\"usual_spread\" : 0.8', '\"usual_spread\" : 0', spread above 0",
    "'\"since\" : \"1970-01-01T00:00:00Z\"', '\"since\" : \"spring\"', a moment such as",
    "'\"trips\" : 1', '\"trip\" : 1', Did you mean",
    "'\"since\" : \"1970-01-01T00:00:00Z\"', '\"since\" : \"2030-01-01T00:00:00Z\"', in the order"
  })
  void aFileThatSaysNonsenseIsRefusedWithItsPlace(String said, String nonsense, String words) {
    Vehicle vehicle =
        Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR)
            .withConfigurations(
                Configuration.taught(
                    List.of(Configuration.FIRST, COOLER), List.of(lesson(1, 400))));
    String text = VehicleJson.write(vehicle);
    assertThat(text).contains(said);

    Optional<String> refusal = Optional.empty();
    try {
      VehicleJson.read(text.replaceFirst(Pattern.quote(said), nonsense), "file");
    } catch (VehicleFileException e) {
      refusal = Optional.of(String.valueOf(e.getMessage()));
    }
    assertThat(refusal.orElse("taken")).contains(words, "file", "Nothing was taken from the file.");
  }
}
