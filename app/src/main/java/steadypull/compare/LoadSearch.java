package steadypull.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import steadypull.channel.Channels;

/**
 * Finds the pulls of a trip by load: a dynamometer's as well as climbs. High is what comes near the
 * most that the trip held for half a minute; torque that is cut while it is asked for belongs to
 * the pull. One thread, once.
 */
final class LoadSearch {
  /** Shorter ones show a step of temperature, and nothing of what lasts (our choice). */
  static final int SHORTEST_SECONDS = 30;

  /** What a trip held for so long is its level. */
  private static final int LEVEL_SECONDS = 30;

  /**
   * Less is no pull for any tow vehicle: a solo cruise on the flat takes 15 to 25 kW (estimated).
   */
  static final double LEAST_KILOWATTS = 25;

  /** From a cruise with a trailer, some 40 % of full power, to a climb (our choice). */
  private static final double ON_SHARE = 0.6;

  private static final double OFF_SHARE = 0.5;

  /** An engine control takes up to 60 % of the torque away (common practice, no source). */
  private static final double CUT_OFF_SHARE = 0.25;

  /** As the contract of a derate has it: points of torque under what is asked for. */
  private static final double CUT_PERCENT = 5;

  /** A gear change, or a breath at a bend. */
  private static final int BREAK_SECONDS = 8;

  /** Half of a median's width: single wrong values count for nothing, edges stay. */
  private static final int HALF_MEDIAN = 2;

  private final TripSeconds trip;
  private final double[] smooth;

  private LoadSearch(TripSeconds trip) {
    this.trip = trip;
    this.smooth = new double[trip.seconds()];
    for (int second = 0; second < smooth.length; second++) {
      smooth[second] =
          Figures.median(trip.power().span(second - HALF_MEDIAN, second + HALF_MEDIAN + 1))
              .orElse(Double.NaN);
    }
  }

  /** The stretches of a trip, earliest first. */
  static List<Stretch> find(TripSeconds trip) {
    return new LoadSearch(trip).find();
  }

  private List<Stretch> find() {
    double level = level();
    List<Stretch> found = new ArrayList<>();
    if (level < LEAST_KILOWATTS) {
      return found;
    }
    for (int second = 0; second < smooth.length; second++) {
      if (smooth[second] >= ON_SHARE * level) {
        int end = end(second, level);
        Stretch stretch = new OnsetSearch(trip.power()).refined(second, end);
        if (stretch.seconds() >= SHORTEST_SECONDS) {
          found.add(stretch);
        }
        second = Math.max(second, end);
      }
    }
    return found;
  }

  /** The most that was held for half a minute, kW; 0 if power was never told for so long. */
  private double level() {
    double most = 0;
    for (int from = 0; from + LEVEL_SECONDS <= smooth.length; from++) {
      double[] span = trip.power().span(from, from + LEVEL_SECONDS);
      OptionalDouble mean = Figures.mean(span);
      if (Figures.count(span) >= 0.8 * LEVEL_SECONDS && mean.orElse(0) > most) {
        most = mean.orElse(0);
      }
    }
    return most;
  }

  /** The second after the last under load. */
  private int end(int from, double level) {
    int last = from;
    for (int second = from; second < smooth.length && second - last <= BREAK_SECONDS; second++) {
      double share = isCut(second) ? CUT_OFF_SHARE : OFF_SHARE;
      if (smooth[second] >= share * level) {
        last = second;
      }
    }
    return last + 1;
  }

  private boolean isCut(int second) {
    OptionalDouble demanded = trip.at(Channels.DEMANDED_TORQUE, second);
    OptionalDouble delivered = trip.at(Channels.DELIVERED_TORQUE, second);
    return demanded.isPresent()
        && delivered.isPresent()
        && demanded.getAsDouble() - delivered.getAsDouble() >= CUT_PERCENT;
  }
}
