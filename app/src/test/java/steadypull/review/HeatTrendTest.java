package steadypull.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import steadypull.vehicle.Circuit;
import steadypull.vehicle.HeatQuantity;
import steadypull.vehicle.HeatTold;
import steadypull.vehicle.LessonOfTrip;
import steadypull.vehicle.TripHeat;

/** A conductance over months: what is news, and what is the weather. */
class HeatTrendTest {
  private static final HeatQuantity CONDUCTANCE =
      new HeatQuantity(
          "charge_coolant.conductance_W_per_K", Circuit.CHARGE_AIR, true, Math.log(300), 0.8);
  private static final Instant FIRST = Instant.parse("2026-05-01T08:00:00Z");
  private static final int TRIPS = 14;

  /** Trips every nine days; each claims to know within 4 %. */
  private static List<LessonOfTrip> season(int trips, IntToDoubleFunction conductance) {
    List<LessonOfTrip> lessons = new ArrayList<>();
    for (int trip = 0; trip < trips; trip++) {
      HeatTold told = new HeatTold(CONDUCTANCE, Math.log(conductance.applyAsDouble(trip)), 0.04);
      lessons.add(
          new LessonOfTrip(
              FIRST.plus(Duration.ofDays(9L * trip)), new TripHeat(0.8, List.of(told), List.of())));
    }
    return lessons;
  }

  private static HeatTrend trend(List<LessonOfTrip> lessons) {
    return HeatTrend.of(CONDUCTANCE.id(), lessons).orElseThrow();
  }

  /** Falls evenly to what is left, in windy weather that nobody measures. */
  private static List<LessonOfTrip> windy(Random random, double left, double scatter) {
    return season(
        TRIPS,
        trip ->
            500 * Math.pow(left, trip / (TRIPS - 1.0)) * Math.exp(scatter * random.nextGaussian()));
  }

  @Test
  void anEvenFallIsToldAsItIs() {
    HeatTrend trend = trend(season(TRIPS, trip -> 500 * Math.pow(0.78, trip / (TRIPS - 1.0))));

    assertThat(trend.p50()).isCloseTo(-0.22, within(1e-9));
    assertThat(trend.isFall()).isTrue();
    assertThat(trend.trips()).isEqualTo(TRIPS);
    assertThat(trend.first()).isEqualTo(FIRST);
  }

  @Test
  void theIntervalHoldsTheTruthNineTimesInTen() {
    Random random = new Random(3);
    int held = 0;
    for (int season = 0; season < 1000; season++) {
      HeatTrend trend = trend(windy(random, 0.8, 0.12));
      held += trend.p05() <= -0.2 && -0.2 <= trend.p95() ? 1 : 0;
    }
    assertThat(held).isBetween(860, 930);
  }

  @Test
  void windAloneIsHardlyEverTakenForDirtAndDirtMostlyFound() {
    Random random = new Random(4);
    int accused = 0;
    int found = 0;
    for (int season = 0; season < 400; season++) {
      accused += trend(windy(random, 1, 0.12)).isFall() ? 1 : 0;
      found += trend(windy(random, 0.7, 0.12)).isFall() ? 1 : 0;
    }
    assertThat(accused).as("of 400 unchanged").isLessThanOrEqualTo(12);
    assertThat(found).as("of 400 clogging").isGreaterThanOrEqualTo(320);
  }

  /** A sensor fault on the last trip, where a point has the most weight. */
  @Test
  void oneBadTripMakesNoNews() {
    Random random = new Random(5);
    HeatTrend trend =
        trend(
            season(
                TRIPS,
                trip -> trip == TRIPS - 1 ? 120 : 500 * Math.exp(0.05 * random.nextGaussian())));

    assertThat(trend.isFall()).isFalse();
    assertThat(trend.p50()).isBetween(-0.15, 0.05);
  }

  @Test
  void aFallOfAFewPerCentIsNoNewsHoweverSure() {
    HeatTrend trend = trend(season(TRIPS, trip -> 500 * Math.pow(0.92, trip / (TRIPS - 1.0))));

    assertThat(trend.p95()).isLessThan(0);
    assertThat(trend.isFall()).isFalse();
  }

  @Test
  void aFewTripsOrOneDayMakeNoTrend() {
    assertThat(HeatTrend.of(CONDUCTANCE.id(), season(5, trip -> 500 - 40.0 * trip))).isEmpty();
    assertThat(HeatTrend.of("engine_oil.lag_s", season(14, _ -> 500))).isEmpty();
    List<LessonOfTrip> day = new ArrayList<>();
    for (LessonOfTrip lesson : season(8, trip -> 500 - 20.0 * trip)) {
      day.add(new LessonOfTrip(FIRST.plusSeconds(day.size() * 3600L), lesson.heat()));
    }
    assertThat(HeatTrend.of(CONDUCTANCE.id(), day)).isEmpty();
  }
}
