package steadypull.backtest;

import java.time.Duration;
import java.util.List;
import steadypull.review.HeatTrend;
import steadypull.vehicle.LessonOfTrip;

/**
 * Twelve trips of a vehicle in two months, each with its own weather, wind, road and air
 * conditioning, while dirt may gather on its radiators.
 */
final class CloggingSeason {
  /** Of the conductance of the invented radiators, the share that is left with this much closed. */
  static final double SEVEN_TENTHS_LEFT = 1 - Math.pow(0.7, 1 / 0.62);

  /** Trips that turn and come back meet 2 m/s on the mean over the trip (our choice). */
  static final double USUAL_WIND = 0.5;

  static final double WHOLE_WIND = 1;

  private static final int TRIPS = 12;
  private static final Duration LENGTH = Duration.ofMinutes(30);

  private CloggingSeason() {}

  /**
   * Whether a season makes somebody look at a cooler.
   *
   * @param number of the vehicle's world
   * @param windShare see {@link LearntSeason#drive(int, double, double, Duration)}
   * @param closed share of the radiators' face that is closed at the last trip
   */
  static boolean isNews(int number, double windShare, double closed) {
    TowingWorld world = TowingWorld.of(number);
    LearntSeason season = new LearntSeason(world);
    for (int trip = 1; trip <= TRIPS; trip++) {
      season.drive(trip, windShare, closed * (trip - 1) / (TRIPS - 1), LENGTH);
    }
    List<LessonOfTrip> lessons = season.lessons();
    return HeatTrend.watched(world.vehicle().layout()).stream()
        .flatMap(id -> HeatTrend.of(id, lessons).stream())
        .anyMatch(HeatTrend::isFall);
  }
}
