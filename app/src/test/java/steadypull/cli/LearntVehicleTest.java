package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.HeatTeacher;
import steadypull.store.NewTrip;
import steadypull.store.TripDetails;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;
import steadypull.vehicle.Circuit;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.DerateBegun;
import steadypull.vehicle.HeatQuantity;
import steadypull.vehicle.HeatTold;
import steadypull.vehicle.TripHeat;
import steadypull.vehicle.Vehicle;

/** What a vehicle has learnt of its cooling, as somebody at a terminal sees it. */
class LearntVehicleTest {
  private static final Vehicle WATTLE = Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR);
  private static final Instant FIRST = Desk.NOW.minus(Duration.ofDays(40));

  @TempDir private Path folder;

  private Path libraryFolder() {
    return folder.resolve("library");
  }

  private Desk desk() {
    return new Desk(libraryFolder());
  }

  /**
   * Every trip tells a circuit of 21 kJ/K that moves 610 W/K, and derates at 96 degC; the engine's
   * radiator moves 3 % less from trip to trip.
   */
  private static final class Invented implements HeatTeacher {
    @Override
    public Look begin(Vehicle vehicle, TripDetails details) {
      return new Look() {
        private double trip;

        @Override
        public void accept(TripEntry entry) {
          if (entry instanceof TripEntry.OfSample(Sample sample)) {
            trip = sample.value();
          }
        }

        @Override
        public TripHeat finish() {
          return new TripHeat(
              0.9,
              List.of(
                  told(
                      "charge_coolant.heat_capacity_J_per_K",
                      Circuit.CHARGE_AIR,
                      28_000,
                      0.5,
                      21_000),
                  told("charge_coolant.conductance_W_per_K", Circuit.CHARGE_AIR, 300, 0.8, 610),
                  told("engine_oil.above_coolant_K_per_hundred_kW", Circuit.ENGINE_OIL, 4, 0.4, 5),
                  told(
                      "engine_coolant.conductance_W_per_K",
                      Circuit.ENGINE_COOLANT,
                      1700,
                      0.3,
                      1700 * Math.pow(0.97, trip))),
              List.of(new DerateBegun("charge_coolant_temp", 96, List.of())));
        }
      };
    }

    private static HeatTold told(
        String id, Circuit circuit, double usual, double spread, double value) {
      return new HeatTold(
          new HeatQuantity(id, circuit, true, Math.log(usual), spread), Math.log(value), 0.05);
    }
  }

  @BeforeEach
  void nineTripsHaveTaught() throws Exception {
    try (TripLibrary library = TripLibrary.open(libraryFolder())) {
      library.save(WATTLE);
      for (int trip = 0; trip < 9; trip++) {
        List<Sample> samples = new ArrayList<>();
        samples.add(new Sample(Channels.ENGINE_COOLANT_TEMP, 1_000_000, trip));
        NewTrip kept = new NewTrip(WATTLE, FIRST.plus(Duration.ofDays(trip)), "", "test", "0.1.0");
        library.keep(kept, samples, 2_000_000);
      }
      Invented teacher = new Invented();
      while (library.heat().learnNext(teacher)) {
        // One trip after the other.
      }
    }
  }

  @Test
  void itIsToldInPlainWordsWithIntervalUnitAndTrips() {
    Desk.Answer shown = desk().type("vehicle", "Wattle 2");

    assertThat(shown.status()).isZero();
    assertThat(shown.err()).isEmpty();
    assertThat(shown.out())
        .containsPattern(
            "charge cooler's circuit: 21 kJ/K \\(1\\d to 2\\d\\), moves 610 W/K \\(5\\d0 to"
                + " 7\\d0\\) at 90 km/h, from 9 trips")
        .containsPattern(
            "engine oil: (4.9|5.0) K \\(.* to .*\\) above coolant for each 100 kW of fuel, from 9"
                + " trips");
  }

  @Test
  void whatFallsFromTripToTripIsToldWithItsInterval() {
    assertThat(desk().type("vehicle", "Wattle 2").out())
        .containsPattern(
            "engine's radiator moves 22 % less heat than in June 2026 \\(\\d+ to \\d+ %\\), 9"
                + " trips: clogging\\?")
        .doesNotContain("charge cooler's radiator moves");
    desk().type("vehicle", "Wattle 2", "--fitted", "new radiator");
    assertThat(desk().type("vehicle", "Wattle 2").out())
        .as("what was fitted since has its own history")
        .doesNotContain("clogging");
  }

  @Test
  void whereItReallyDeratesIsOfferedAndTakenOnlyWhenSomebodySaysSo() {
    Desk.Answer offered = desk().type("vehicle", "Wattle 2", "--propose-limits");

    assertThat(offered.out())
        .contains("charge_coolant_temp: 94.0 degC in place of 100.0 degC (default)")
        .contains("9 derates on 9 trips told at 96 degC")
        .contains("--confirm-limit CHANNEL");
    assertThat(desk().type("vehicle", "Wattle 2").out())
        .containsPattern("limit charge_coolant_temp +100.0 degC");

    Desk.Answer confirmed =
        desk().type("vehicle", "Wattle 2", "--confirm-limit", "charge_coolant_temp");

    assertThat(confirmed.status()).isZero();
    assertThat(desk().type("vehicle", "Wattle 2").out())
        .containsPattern("limit charge_coolant_temp +94.0 degC  learnt: 9 derates on 9 trips");
    assertThat(desk().type("vehicle", "Wattle 2", "--propose-limits").out())
        .contains("nothing to change of 94.0 degC (learnt)")
        .doesNotContain("Confirm one");
    Desk.Answer again =
        desk().type("vehicle", "Wattle 2", "--confirm-limit", "charge_coolant_temp");
    assertThat(again.status()).isEqualTo(1);
    assertThat(again.err()).contains("Could not confirm", "expected", "found none of that kind");
  }

  @Test
  void thatALimitWasLearntNobodySaysByHand() {
    desk().type("vehicle", "Wattle 2", "--limit", "charge_coolant_temp=120:learnt");

    assertThat(desk().type("vehicle", "Wattle 2").out())
        .containsPattern("limit charge_coolant_temp +120.0 degC  owner: learnt");
  }

  @Test
  void whatIsFittedOpensItsCircuitAndLeavesTheOthers() {
    Desk.Answer fitted = desk().type("vehicle", "Wattle 2", "--fitted", "second charge cooler");

    assertThat(fitted.status()).isZero();
    assertThat(fitted.out())
        .contains("second charge cooler", "Learnt anew: charge cooler's circuit.");
    assertThat(desk().type("vehicle", "Wattle 2").out())
        .contains("fitted since 2026-07-15: second charge cooler")
        .containsPattern("moves 610 W/K \\(1\\d\\d to 2\\d\\d0\\) at 90 km/h, carried over")
        .containsPattern("engine oil: .* from 9 trips");
    Desk.Answer again = desk().type("vehicle", "Wattle 2", "--fitted", "third charge cooler");
    assertThat(again.status()).as("the clock stands").isEqualTo(1);
    assertThat(again.err())
        .contains("expected a moment after", "found", "Set this machine's clock");
  }

  @Test
  void whoKnowsBetterSaysWhichCircuitsAreTouched() {
    Desk.Answer fitted =
        desk()
            .type(
                "vehicle",
                "Wattle 2",
                "--fitted",
                "red hoses",
                "--touches",
                "charge-air,engine-oil");

    assertThat(fitted.out()).contains("Learnt anew: charge cooler's circuit, engine oil.");
  }

  @Test
  void whatWasLearntTravelsWithTheVehicle() throws Exception {
    String file = folder.resolve("wattle.vehicle").toString();
    desk().type("vehicle", "Wattle 2", "--fitted", "bigger gearbox cooler");
    Desk.Answer out = desk().type("vehicle", "Wattle 2", "--export", file);
    assertThat(out.status()).isZero();
    assertThat(Files.readString(Path.of(file)))
        .contains(
            "\"configurations\"", "bigger gearbox cooler", "charge_coolant.conductance_W_per_K");

    Desk other = new Desk(folder.resolve("other"));
    Desk.Answer in = other.type("vehicle", "Wattle 2", "--import", file);

    assertThat(in.status()).isZero();
    assertThat(other.type("vehicle", "Wattle 2").out())
        .isEqualTo(desk().type("vehicle", "Wattle 2").out())
        .contains("from 9 trips");
  }

  @Test
  void whatIsForgottenIsTold() throws Exception {
    Desk.Answer forgotten = desk().type("vehicle", "Wattle 2", "--forget-learnt");

    assertThat(forgotten.status()).isZero();
    assertThat(forgotten.out()).contains("Forgot what 9 trips had taught of \"Wattle 2\".");
    assertThat(desk().type("vehicle", "Wattle 2").out()).doesNotContain("kJ/K");
    assertThat(desk().type("vehicle", "Wattle 2", "--forget-learnt").out())
        .contains("No trip had taught anything");
    try (TripLibrary library = TripLibrary.open(libraryFolder())) {
      assertThat(library.trips(Optional.empty())).as("trips stay").hasSize(9);
    }
  }

  @Test
  void whatDoesNotGoTogetherIsRefusedInFourParts() {
    assertThat(desk().type("vehicle", "Wattle 2", "--touches", "gearbox").err())
        .contains(
            "expected --fitted beside --touches, found --touches alone. Say what was fitted.");
    assertThat(desk().type("vehicle", "Wattle 2", "--fitted", "fan", "--forget-learnt").status())
        .isEqualTo(2);
    assertThat(desk().type("vehicle", "Wattle 2", "--fitted", "x".repeat(201)).err())
        .contains("expected at most 200 letters, found 201");
    assertThat(desk().type("vehicle", "Nobody", "--fitted", "fan").status()).isEqualTo(1);
    assertThat(desk().type("vehicle", "Nobody", "--forget-learnt").err()).contains("Wattle 2");
  }

  /** The figures are those that the trips were made to tell, 0.97^8 = 0.784 among them. */
  @Test
  void aVehicleIsToldToMachinesWithAllThatItsTripsHaveTaught() throws Exception {
    JsonNode told = new ObjectMapper().readTree(desk().type("vehicle", "Wattle 2", "--json").out());

    assertThat(told.get("layout").asText()).isEqualTo("water-to-air");
    JsonNode limit = told.get("limits").get(0);
    assertThat(limit.fieldNames())
        .toIterable()
        .containsExactly("channel", "limit_degC", "provenance", "note", "confirmed");
    assertThat(limit.get("confirmed").asBoolean()).isFalse();
    JsonNode learnt = told.get("configurations").get(0).get("learnt");
    JsonNode conductance = learnt.get("charge_coolant.conductance_W_per_K");
    assertThat(conductance.get("p50").asDouble()).isCloseTo(610, within(15.0));
    assertThat(conductance.get("p05").asDouble()).isLessThan(conductance.get("p50").asDouble());
    assertThat(conductance.get("p95").asDouble()).isGreaterThan(610);
    assertThat(conductance.get("trips").asInt()).isEqualTo(9);
    JsonNode trend = told.get("trends").get(1);
    assertThat(trend.get("quantity").asText()).isEqualTo("engine_coolant.conductance_W_per_K");
    assertThat(trend.get("change_pct").get("p50").asDouble()).isCloseTo(-21.6, within(1.0));
    assertThat(trend.get("falling").asBoolean()).isTrue();
    assertThat(told.get("trends").get(0).get("falling").asBoolean()).isFalse();
    JsonNode proposal = told.get("limit_proposals").get(0);
    assertThat(proposal.get("channel").asText()).isEqualTo("charge_coolant_temp");
    assertThat(proposal.get("entered_degC").asDouble()).isEqualTo(100);
    assertThat(proposal.get("proposed_degC").asDouble()).isEqualTo(94);
    assertThat(proposal.get("began_degC")).hasSize(9);
  }

  @Test
  void whatIsToldToMachinesStandsAlone() {
    assertThat(desk().type("vehicle", "Wattle 2", "--json", "--propose-limits").status())
        .isEqualTo(2);
    assertThat(desk().type("vehicle", "Wattle 2", "--json", "--forget-learnt").status())
        .isEqualTo(2);
  }
}
