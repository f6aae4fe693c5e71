package steadypull.thermal;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * How far the power of this drive moves away from the present one. The road ahead is unknown; a
 * band that pretended that the present load certainly goes on would be a lie.
 *
 * <p>Engines work between nothing and the most that a drive has asked of them. Near the most there
 * is little more to come but much to fall, near nothing it is the other way round, so the spread is
 * lopsided: each side is a share of the way that is left on that side, and ends where the way ends.
 * The share is learnt. Mostly the load just stays, so the middle of the draws stays near it; and no
 * draw goes farther than four spans in five went: what is rarer is a surprise, not the present load
 * held. Pipeline thread only.
 */
final class LoadSpread {
  private static final double SPAN_SECONDS = 60;

  /**
   * Hills do not come at once: two minutes ahead the spread is 1.6 times, half a minute ahead 0.56
   * times that of one minute (estimated from rolling country).
   */
  private static final double GROWTH_SECONDS = 110;

  private static final double GROWN_AFTER_SPAN = -Math.expm1(-SPAN_SECONDS / GROWTH_SECONDS);

  /** The drive of the last ten minutes tells about the next (estimated). */
  private static final double MEMORY_SECONDS = 600;

  /** Before the drive has shown it: share that a minute takes, two times in three (estimated). */
  private static final double PRIOR_SHARE = 0.2;

  private static final double PRIOR_SECONDS = 300;

  /** No drive is so even that less should be believed (estimated). */
  private static final double LEAST_SHARE = 0.05;

  /** A rolling road looks worse than a climb is; more would drown the model (estimated). */
  private static final double MOST_SHARE = 0.55;

  /** Four spans in five of a normal distribution stay within so many standard deviations. */
  private static final double NORMAL_80 = 1.2816;

  /** Gusts and small waves, whatever way is left, kW after a minute (estimated). */
  private static final double LEAST_KILOWATTS = 2;

  private static final int BINS = 50;

  private record Past(double seconds, double kilowatts) {}

  private final Deque<Past> past = new ArrayDeque<>();
  private final double[] seen = new double[BINS];
  private double mostKilowatts;
  private double share;
  private double grownSeconds = -1;
  private double grown;

  LoadSpread() {
    double total = 0;
    for (int bin = 0; bin < BINS; bin++) {
      double deviations = middle(bin) / PRIOR_SHARE;
      seen[bin] = Math.exp(-deviations * deviations / 2);
      total += seen[bin];
    }
    for (int bin = 0; bin < BINS; bin++) {
      seen[bin] *= PRIOR_SECONDS / total;
    }
    share = shareWithin();
  }

  /** Takes the held power of one moment. */
  void accept(double seconds, double kilowatts) {
    mostKilowatts = Math.max(mostKilowatts, kilowatts);
    if (!past.isEmpty() && seconds - past.getLast().seconds() > SPAN_SECONDS / 4) {
      past.clear();
    }
    double step = past.isEmpty() ? 0 : seconds - past.getLast().seconds();
    past.addLast(new Past(seconds, kilowatts));
    if (seconds - past.getFirst().seconds() >= SPAN_SECONDS) {
      learn(past.removeFirst().kilowatts(), kilowatts, step);
    }
  }

  /**
   * The power after the given number of seconds in one draw, kW, 0 or more.
   *
   * @param seconds ahead, 0 or more
   * @param kilowatts now
   * @param engineMostKilowatts what the engine could give; 0 if unknown, then what was seen counts
   * @param normal the draw's standard normal number
   */
  double kilowattsAfter(
      double seconds, double kilowatts, double engineMostKilowatts, double normal) {
    double grown = grown(seconds);
    double most =
        Math.max(engineMostKilowatts, Math.max(mostKilowatts, kilowatts) + LEAST_KILOWATTS);
    double way = Math.max(LEAST_KILOWATTS, normal > 0 ? most - kilowatts : kilowatts);
    double bounded = Math.clamp(normal / NORMAL_80, -1, 1);
    double moved =
        kilowatts
            + bounded
                * Math.sqrt(Math.abs(bounded))
                * grown
                * Math.max(LEAST_KILOWATTS, share * way);
    return Math.clamp(moved, 0.0, most);
  }

  /** How many times the spread of one span is there by then; every draw asks for it in turn. */
  private double grown(double seconds) {
    if (seconds != grownSeconds) {
      grownSeconds = seconds;
      // Math.exp is many times faster than expm1, and nothing here is small.
      grown = (1 - Math.exp(-seconds / GROWTH_SECONDS)) / GROWN_AFTER_SPAN;
    }
    return grown;
  }

  private void learn(double before, double after, double step) {
    double way = after > before ? mostKilowatts - before : before;
    double taken = way < 1 ? 0 : Math.abs(after - before) / way;
    double kept = Math.exp(-step / MEMORY_SECONDS);
    for (int bin = 0; bin < BINS; bin++) {
      seen[bin] *= kept;
    }
    seen[Math.clamp((int) (taken * BINS), 0, BINS - 1)] += step;
    share = shareWithin();
  }

  /** The share of the way within which four minutes in five stayed. */
  private double shareWithin() {
    double total = 0;
    for (double weight : seen) {
      total += weight;
    }
    double within = 0;
    int bin = 0;
    while (bin < BINS - 1 && within + seen[bin] < 0.8 * total) {
      within += seen[bin];
      bin++;
    }
    double part = (0.8 * total - within) / Math.max(1e-9, seen[bin]);
    return Math.clamp((bin + part) / BINS, LEAST_SHARE, MOST_SHARE);
  }

  private static double middle(int bin) {
    return (bin + 0.5) / BINS;
  }
}
