package steadypull.thermal;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.OptionalDouble;

/**
 * Tells a speed limiter: torque goes as a speed is reached that then stays. A derate lets the speed
 * fall again, and a limiter would give torque back then; or it comes at a speed that stood before,
 * as on rollers. Pipeline thread only.
 */
final class HeldSpeed {
  private static final double WATCHED_SECONDS = 10;

  /** A rig that gained less was not on its way to a limiter (estimated: 1 km/h steps). */
  private static final double GAINED = 2;

  /** Between two steps of the reading its mean may stand anywhere in 1 km/h (estimated). */
  private static final double STAYS_WITHIN = 0.7;

  /** A limiter lets a rig swing so far over (estimated). */
  private static final double SWINGS = 2;

  private record Past(double seconds, double kilometresPerHour) {}

  private final Deque<Past> past = new ArrayDeque<>();
  private OptionalDouble reached = OptionalDouble.empty();
  private double fastest;

  /** Takes a moment; times do not run backwards. */
  void accept(PullMoment now) {
    OptionalDouble speed = now.kilometresPerHour();
    if (speed.isEmpty()) {
      past.clear();
      reached = OptionalDouble.empty();
      return;
    }
    past.addLast(new Past(now.seconds(), speed.getAsDouble()));
    while (now.seconds() - past.getFirst().seconds() > WATCHED_SECONDS) {
      past.removeFirst();
    }
    double mean = mean();
    fastest = Math.max(fastest, mean);
    boolean isLeft = mean < fastest - STAYS_WITHIN || mean > reached.orElse(mean) + SWINGS;
    if (isLeft) {
      reached = OptionalDouble.empty();
    }
  }

  /** Torque begins to be missing now. */
  void cutBegins() {
    boolean isGaining =
        !past.isEmpty()
            && past.getLast().kilometresPerHour() - past.getFirst().kilometresPerHour() >= GAINED;
    reached =
        isGaining ? OptionalDouble.of(past.getLast().kilometresPerHour()) : OptionalDouble.empty();
    fastest = mean();
  }

  /** Whether a limiter explains what is missing. */
  boolean isLimited() {
    return reached.isPresent();
  }

  private double mean() {
    return past.stream().mapToDouble(Past::kilometresPerHour).average().orElse(0);
  }
}
