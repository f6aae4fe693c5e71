package steadypull.review;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.TDistribution;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.HeatTold;
import steadypull.vehicle.LessonOfTrip;

/**
 * How a quantity of a vehicle's heat has changed over its trips: a straight line through what each
 * trip told by itself, weighed by what it knows. Trips differ by more than they know of themselves
 * (nobody measures the wind), so that much is added to each until the line fits them (Paule and
 * Mandel, Consensus values and weighting factors, Journal of Research of the National Bureau of
 * Standards 87, 1982), and those far off count less (Huber, Robust Statistics, 1981). Immutable.
 *
 * @param quantityId which quantity
 * @param first when the first of the trips began
 * @param trips how many there are
 * @param p05 share by which it is greater at the last trip than at the first, or smaller, below 0:
 *     one chance in twenty that it is less than this
 * @param p50 the most likely one
 * @param p95 one chance in twenty that it is more
 */
public record HeatTrend(
    String quantityId, Instant first, int trips, double p05, double p50, double p95) {
  /** Fewer trips are a handful of days' weather (estimated). */
  static final int FEWEST_TRIPS = 6;

  /** So much less has to be likely to be told. */
  private static final double LEAST_CHANGE = 0.10;

  /**
   * And so little has to be unlikely: an interval that only excludes no change at all accused 13 of
   * 100 invented vehicles that had not changed.
   */
  private static final double LEAST_CERTAIN_CHANGE = 0.04;

  private static final double ONE_SIDED = 0.95;
  private static final int ROUNDS = 12;
  private static final int HALVINGS = 60;

  /** In coordinates: no trips of one vehicle differ by more than a factor e^3. */
  private static final double GREATEST_SCATTER_VARIANCE = 9;

  /** Beyond so many standard deviations a trip counts less (Huber's usual choice). */
  private static final double HUBER_DEVIATIONS = 1.5;

  private static final double SECONDS_IN_A_DAY = 86_400;

  /** The quantities that fall when what stands in the stream of air clogs. */
  public static List<String> watched(CoolingLayout layout) {
    String chargeSide =
        switch (layout) {
          case AIR_TO_AIR -> "charge_air.transfer_units";
          case WATER_TO_AIR -> "charge_coolant.conductance_W_per_K";
        };
    return List.of(chargeSide, "engine_coolant.conductance_W_per_K");
  }

  /** Whether it is less by so much, and so surely, that somebody should look. */
  public boolean isFall() {
    return p50 < -LEAST_CHANGE && p95 < -LEAST_CERTAIN_CHANGE;
  }

  /**
   * The trend of a quantity that cannot be negative.
   *
   * @param lessons of trips of one configuration, in the order in which they began
   * @return empty if too few trips told it, or all on one day
   */
  public static Optional<HeatTrend> of(String quantityId, List<LessonOfTrip> lessons) {
    List<Told> told = new ArrayList<>();
    for (LessonOfTrip lesson : lessons) {
      for (HeatTold each : lesson.heat().told()) {
        if (each.quantity().id().equals(quantityId) && each.quantity().logarithmic()) {
          told.add(new Told(lesson.start(), each.coordinate(), each.spread()));
        }
      }
    }
    return told.size() < FEWEST_TRIPS || days(told)[told.size() - 1] < 1
        ? Optional.empty()
        : Optional.of(through(quantityId, told));
  }

  private record Told(Instant start, double coordinate, double spread) {}

  private static double[] days(List<Told> told) {
    Instant first = told.getFirst().start();
    return told.stream()
        .mapToDouble(trip -> Duration.between(first, trip.start()).toSeconds() / SECONDS_IN_A_DAY)
        .toArray();
  }

  private static HeatTrend through(String quantityId, List<Told> told) {
    double[] days = days(told);
    double[] coordinates = told.stream().mapToDouble(Told::coordinate).toArray();
    double[] variances = told.stream().mapToDouble(trip -> trip.spread() * trip.spread()).toArray();
    double[] shares = new double[days.length];
    Arrays.fill(shares, 1);
    double scatter = 0;
    for (int round = 0; round < ROUNDS; round++) {
      scatter = scatter(days, coordinates, variances, shares);
      WeightedLine line =
          WeightedLine.through(days, coordinates, weights(variances, shares, scatter));
      for (int i = 0; i < shares.length; i++) {
        double off =
            Math.abs(line.missed(days[i], coordinates[i])) / Math.sqrt(variances[i] + scatter);
        shares[i] = off <= HUBER_DEVIATIONS ? 1 : HUBER_DEVIATIONS / off;
      }
    }
    WeightedLine line =
        WeightedLine.through(days, coordinates, weights(variances, shares, scatter));
    double span = days[days.length - 1];
    double apart =
        new TDistribution(days.length - 2.0).inverseCumulativeProbability(ONE_SIDED)
            * line.slopeDeviation()
            * span;
    double change = line.slope() * span;
    return new HeatTrend(
        quantityId,
        told.getFirst().start(),
        days.length,
        Math.expm1(change - apart),
        Math.expm1(change),
        Math.expm1(change + apart));
  }

  private static double[] weights(double[] variances, double[] shares, double scatter) {
    double[] weights = new double[shares.length];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = shares[i] / (variances[i] + scatter);
    }
    return weights;
  }

  /** The variance between trips with which the squares come out as many as there are freedoms. */
  private static double scatter(
      double[] days, double[] coordinates, double[] variances, double[] shares) {
    double low = 0;
    double high = GREATEST_SCATTER_VARIANCE;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = i == 0 ? 0 : (low + high) / 2;
      double[] weights = weights(variances, shares, middle);
      boolean isTooLittle =
          WeightedLine.through(days, coordinates, weights).squares() > days.length - 2;
      if (i == 0 && !isTooLittle) {
        return 0;
      }
      low = isTooLittle ? middle : low;
      high = isTooLittle ? high : middle;
    }
    return (low + high) / 2;
  }
}
