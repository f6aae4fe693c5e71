package steadypull.vehicle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What several trips together say of a quantity, and how well they know it. */
class LearntQuantityTest {
  private static final HeatQuantity CONDUCTANCE =
      new HeatQuantity(
          "charge_coolant.conductance_W_per_K", Circuit.CHARGE_AIR, true, Math.log(300), 0.8);
  private static final HeatQuantity THERMOSTAT =
      new HeatQuantity(
          "engine_coolant.thermostat_opens_degC", Circuit.ENGINE_COOLANT, false, 85, 4);
  private static final Instant START = Instant.parse("2026-05-01T08:00:00Z");
  private static final double NINETY_PERCENT = 1.645;

  private static TripHeat trip(HeatTold... told) {
    return new TripHeat(0.8, List.of(told), List.of());
  }

  private static HeatTold told(double conductance, double spread) {
    return new HeatTold(CONDUCTANCE, Math.log(conductance), spread);
  }

  private static LearntHeat after(LearntHeat before, int day, double conductance, double spread) {
    return before.after(trip(told(conductance, spread)), START.plus(Duration.ofDays(day)));
  }

  private static LearntHeat fiveTripsAt(double conductance) {
    LearntHeat learnt = LearntHeat.NOTHING;
    for (int day = 0; day < 5; day++) {
      learnt = after(learnt, day, conductance * (day % 2 == 0 ? 1.05 : 0.95), 0.1);
    }
    return learnt;
  }

  private static LearntQuantity conductance(LearntHeat learnt) {
    return learnt.of(CONDUCTANCE.id()).orElseThrow();
  }

  private static double watts(LearntHeat learnt) {
    return Math.exp(conductance(learnt).mean());
  }

  /** Weights of a mean by inverse variances: exactly where the trip and the layout know as much. */
  @Test
  void theFirstTripMeetsTheLayoutsBeliefByWhatEachKnows() {
    double scatter = 0.35 * 0.8;
    double trip = Math.sqrt(0.8 * 0.8 - scatter * scatter);

    LearntHeat learnt = after(LearntHeat.NOTHING, 0, 600, trip);

    assertThat(conductance(learnt).mean())
        .isCloseTo((Math.log(300) + Math.log(600)) / 2, within(1e-9));
    assertThat(conductance(learnt).trips()).isEqualTo(1);
  }

  @Test
  void aTripThatKnowsLittleMovesLittle() {
    LearntHeat before = fiveTripsAt(500);

    double byVague = watts(after(before, 6, 400, 0.6));
    double byClear = watts(after(before, 6, 400, 0.05));

    assertThat(byVague).isBetween(485.0, watts(before));
    assertThat(byClear).isLessThan(byVague);
  }

  /** Each trip claims to know to 2 %, and they differ by 25 %: so it is known to 25 %. */
  @Test
  void itIsNeverKnownBetterThanTripsAgree() {
    Random random = new Random(5);
    LearntHeat learnt = LearntHeat.NOTHING;
    for (int day = 0; day < 40; day++) {
      learnt = after(learnt, day, 500 * Math.exp(0.25 * random.nextGaussian()), 0.02);
    }
    assertThat(conductance(learnt).spread()).isBetween(0.18, 0.4);
    assertThat(watts(learnt)).isBetween(400.0, 620.0);
  }

  /** A sensor that told nonsense for a trip. */
  @Test
  void oneBadTripRuinsNothing() {
    LearntHeat before = fiveTripsAt(500);
    LearntHeat bad = after(before, 6, 90, 0.03);
    LearntHeat again = after(bad, 7, 510, 0.1);

    assertThat(watts(bad)).isCloseTo(watts(before), within(1e-9));
    assertThat(conductance(bad).spread()).as("but it is doubted").isGreaterThan(0.75);
    assertThat(watts(again)).isBetween(485.0, 515.0);
    assertThat(conductance(again).spread())
        .isLessThan(1.1 * conductance(before).spread())
        .isLessThan(0.4);
  }

  /** A cooler that has clogged overnight, or was fitted and nobody said so. */
  @Test
  void whatTwoTripsInARowSayIsBelievedAgainstAllBefore() {
    LearntHeat once = after(fiveTripsAt(500), 6, 160, 0.05);
    LearntHeat twice = after(once, 7, 150, 0.05);

    assertThat(watts(twice)).isBetween(145.0, 170.0);
    assertThat(conductance(twice).trips()).isEqualTo(2);
  }

  @Test
  void twoBadTripsThatContradictEachOtherRuinNothing() {
    LearntHeat once = after(fiveTripsAt(500), 6, 80, 0.03);
    LearntHeat twice = after(once, 7, 2500, 0.03);

    assertThat(watts(twice)).isBetween(485.0, 515.0);
  }

  @Test
  void whatNobodyLooksAtIsKnownLessFromDayToDayAndNeverLessThanTheLayout() {
    LearntHeat learnt = fiveTripsAt(500);
    Instant last = conductance(learnt).last();

    double year = conductance(learnt.asOf(last.plus(Duration.ofDays(365)))).spread();
    double century = conductance(learnt.asOf(last.plus(Duration.ofDays(36_500)))).spread();

    double now = conductance(learnt).spread();
    // Estimated: 0.3 of the layout's spread in a year, as independent steps add up.
    assertThat(year).isCloseTo(Math.sqrt(now * now + 0.24 * 0.24), within(2e-3));
    assertThat(century).isEqualTo(0.8);
    assertThat(watts(learnt.asOf(last.plus(Duration.ofDays(365)))))
        .isCloseTo(watts(learnt), within(1e-9));
  }

  /**
   * Vehicles, trips and errors as they are assumed to be; the interval is that of the next trip.
   */
  @Test
  void theNextTripLiesInTheIntervalAsOftenAsItSays() {
    Random random = new Random(11);
    int held = 0;
    int all = 0;
    for (int vehicle = 0; vehicle < 400; vehicle++) {
      double truth = Math.log(300) + 0.8 * random.nextGaussian();
      double scatter = 0.8 * (0.15 + 0.4 * random.nextDouble());
      LearntHeat learnt = LearntHeat.NOTHING;
      for (int day = 0; day < 8; day++) {
        double next = truth + scatter * random.nextGaussian();
        if (day > 0) {
          LearntQuantity known = conductance(learnt);
          held += Math.abs(next - known.mean()) <= NINETY_PERCENT * known.spread() ? 1 : 0;
          all++;
        }
        double spread = 0.05 + 0.25 * random.nextDouble();
        learnt = after(learnt, day, Math.exp(next + spread * random.nextGaussian()), spread);
      }
    }
    assertThat((double) held / all).isBetween(0.85, 0.96);
  }

  @Test
  void whatAFittingTouchesBeginsWhereItStoodAndOpenAgain() {
    HeatTold thermostat = new HeatTold(THERMOSTAT, 88, 0.5);
    LearntHeat before =
        LearntHeat.NOTHING
            .after(trip(told(500, 0.1), thermostat), START)
            .after(trip(told(500, 0.1), thermostat), START.plusSeconds(86_400));

    LearntHeat fitted = before.reopened(Set.of(Circuit.CHARGE_AIR));

    assertThat(watts(fitted)).isEqualTo(watts(before));
    assertThat(conductance(fitted).spread()).isEqualTo(0.8);
    assertThat(conductance(fitted).trips()).isZero();
    assertThat(fitted.of(THERMOSTAT.id())).isEqualTo(before.of(THERMOSTAT.id()));
    // One clear trip then moves it nearly all the way.
    assertThat(watts(fitted.after(trip(told(800, 0.1)), START.plusSeconds(200_000))))
        .isGreaterThan(720);
  }

  /** A later version of the program may believe something else before the first trip. */
  @Test
  void whatWasLearntUnderAnotherMeaningIsNotGoneOnWith() {
    HeatQuantity other =
        new HeatQuantity(CONDUCTANCE.id(), Circuit.CHARGE_AIR, true, Math.log(20), 0.5);
    LearntHeat learnt = fiveTripsAt(500).after(trip(new HeatTold(other, Math.log(30), 0.1)), START);

    assertThat(conductance(learnt).trips()).isEqualTo(1);
    assertThat(watts(learnt)).isBetween(20.0, 31.0);
  }
}
