package steadypull.vehicle;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * What a vehicle's trips together say of a quantity: a mean over trips, each weighed by what it
 * knows, and how much trips differ from one another. A trip that contradicts all before it is not
 * mixed in: it stands against them and widens what is believed, until another trip says the same;
 * then those two count. Immutable.
 *
 * @param quantity which
 * @param mean coordinate
 * @param meanSpread standard deviation of the mean, in the coordinate
 * @param scatter standard deviation from trip to trip, in the coordinate
 * @param trips how many trips the mean is made of
 * @param loadedHours hours under load of these trips
 * @param last when the last of them began
 * @param against what the last trip said, if it contradicts the mean
 */
public record LearntQuantity(
    HeatQuantity quantity,
    double mean,
    double meanSpread,
    double scatter,
    int trips,
    double loadedHours,
    Instant last,
    Optional<HeatTold> against) {
  /**
   * Trips of one vehicle differ by this share of the layout's spread until they have shown
   * otherwise: weather, wind and what no sensor tells (estimated from invented vehicles).
   */
  private static final double USUAL_SCATTER_SHARE = 0.35;

  /** So many trips' worth is the belief in that. */
  private static final double USUAL_SCATTER_TRIPS = 3;

  /** No quantity is known better: the models leave out too much (estimated). */
  private static final double LEAST_SHARE = 0.08;

  /** Trips before the last so many no longer narrow the mean, so that it follows slow changes. */
  private static final int REMEMBERED_TRIPS = 8;

  /** Farther out than this many standard deviations a trip contradicts. */
  private static final double CONTRADICTION = 3;

  /**
   * In a year a quantity may have moved by this share of the layout's spread without anybody having
   * seen it: dirt, coolant, another sensor (estimated; as the square root of time).
   */
  private static final double MOVES_IN_A_YEAR = 0.3;

  private static final double SECONDS_IN_A_YEAR = 365.25 * 86_400;

  public LearntQuantity {
    Objects.requireNonNull(quantity);
    Objects.requireNonNull(last);
    Objects.requireNonNull(against);
    if (!Double.isFinite(mean) || !(meanSpread > 0) || !(scatter > 0)) {
      throw new IllegalArgumentException(
          "What was learnt has a mean and spreads above 0, found %s, %s and %s"
              .formatted(mean, meanSpread, scatter));
    }
    if (!(meanSpread < 1e6) || !(scatter < 1e6) || trips < 0 || !(loadedHours >= 0)) {
      throw new IllegalArgumentException(
          "What was learnt counts trips and hours, found %s and %s".formatted(trips, loadedHours));
    }
  }

  /** Before the first trip: the layout's belief. */
  static LearntQuantity nothing(HeatQuantity quantity, Instant start) {
    return new LearntQuantity(
        quantity,
        quantity.usual(),
        quantity.spread(),
        USUAL_SCATTER_SHARE * quantity.spread(),
        0,
        0,
        start,
        Optional.empty());
  }

  /** Standard deviation with which the next trip may begin; never above the layout's. */
  public double spread() {
    double apart = against.map(told -> told.coordinate() - mean).orElse(0.0);
    return Math.min(
        quantity.spread(), Math.sqrt(meanSpread * meanSpread + scatter * scatter + apart * apart));
  }

  /** The same as it is known at a later moment: nobody has looked meanwhile. */
  LearntQuantity asOf(Instant moment) {
    double seconds = Math.max(0, Duration.between(last, moment).toSeconds());
    double moved = MOVES_IN_A_YEAR * quantity.spread();
    double variance = meanSpread * meanSpread + moved * moved * seconds / SECONDS_IN_A_YEAR;
    return with(mean, Math.min(quantity.spread(), Math.sqrt(variance)), scatter, against);
  }

  /** The same layout's belief again about the value that was found: something was fitted. */
  LearntQuantity reopened() {
    return new LearntQuantity(
        quantity,
        mean,
        quantity.spread(),
        USUAL_SCATTER_SHARE * quantity.spread(),
        0,
        0,
        last,
        Optional.empty());
  }

  /** With one more trip. */
  LearntQuantity after(HeatTold told, double hours, Instant start) {
    LearntQuantity now = start.isAfter(last) ? asOf(start) : this;
    Instant latest = start.isAfter(last) ? start : last;
    if (trips > 0 && Math.abs(told.coordinate() - mean) > CONTRADICTION * now.apart(told)) {
      return now.contradictedBy(told, hours, latest);
    }
    return now.joinedBy(told, hours, latest);
  }

  /** Standard deviation of the difference between a trip and the mean. */
  private double apart(HeatTold told) {
    return Math.sqrt(told.spread() * told.spread() + meanSpread * meanSpread + scatter * scatter);
  }

  private LearntQuantity joinedBy(HeatTold told, double hours, Instant latest) {
    double missed = told.coordinate() - mean;
    double trip = told.spread() * told.spread() + scatter * scatter;
    double share = meanSpread * meanSpread / (meanSpread * meanSpread + trip);
    double counted = USUAL_SCATTER_TRIPS + Math.min(trips, REMEMBERED_TRIPS);
    double shown = missed * missed - told.spread() * told.spread() - meanSpread * meanSpread;
    double differs = scatter * scatter + (shown - scatter * scatter) / (counted + 1);
    double known = meanSpread * meanSpread * (1 - share);
    double least = LEAST_SHARE * quantity.spread();
    return new LearntQuantity(
        quantity,
        mean + share * missed,
        Math.sqrt(Math.max(known, trip / REMEMBERED_TRIPS)),
        trips == 0 ? scatter : Math.sqrt(Math.max(least * least, differs)),
        trips + 1,
        loadedHours + hours,
        latest,
        Optional.empty());
  }

  private LearntQuantity contradictedBy(HeatTold told, double hours, Instant latest) {
    return against
        .filter(before -> isAgreed(before, told))
        .map(before -> changedTo(before, told, hours, latest))
        .orElseGet(
            () ->
                new LearntQuantity(
                    quantity,
                    mean,
                    meanSpread,
                    scatter,
                    trips,
                    loadedHours,
                    latest,
                    Optional.of(told)));
  }

  private boolean isAgreed(HeatTold one, HeatTold other) {
    double squares =
        one.spread() * one.spread() + other.spread() * other.spread() + 2 * scatter * scatter;
    return Math.abs(one.coordinate() - other.coordinate()) <= CONTRADICTION * Math.sqrt(squares);
  }

  /** Two trips in a row say that it is not what it was: they count, and nothing before them. */
  private LearntQuantity changedTo(HeatTold before, HeatTold told, double hours, Instant latest) {
    LearntQuantity anew =
        new LearntQuantity(
            quantity,
            before.coordinate(),
            Math.sqrt(before.spread() * before.spread() + scatter * scatter),
            scatter,
            1,
            hours,
            latest,
            Optional.empty());
    return anew.joinedBy(told, hours, latest);
  }

  private LearntQuantity with(
      double changedMean, double changedSpread, double changedScatter, Optional<HeatTold> doubt) {
    return new LearntQuantity(
        quantity, changedMean, changedSpread, changedScatter, trips, loadedHours, last, doubt);
  }
}
