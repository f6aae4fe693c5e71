package steadypull.thermal;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.thermal.PullWindow.Pull;

/**
 * How hard an engine has pulled of late, and what was asked of it then: who gave more when no more
 * was asked is short of it now. Pipeline thread only.
 */
final class PullMemory {
  private static final double MEMORY_SECONDS = 600;
  private static final double CRUISE_MEMORY_SECONDS = 60;

  private static final double FLOORED_PERCENT = 95;

  /** The pedal's own steps and tremor (estimated). */
  private static final double PEDAL_PERCENT = 2;

  /**
   * Full torque differs by half the share by which the engine's speed does, at most (estimated).
   */
  private static final double CURVE_PER_LOG_RPM = 0.5;

  private static final double SAME_RPM = 0.05;
  private static final double NEAR_RPM = 0.2;
  private static final double SAME_GEAR = 0.05;

  /** Near its rated end an engine gives less the faster it turns. */
  private static final double RATED_SHARE = 0.9;

  /** Most diesels of tow vehicles are governed a little above (common practice, no source). */
  private static final double USUAL_RATED_RPM = 3300;

  /** A cruise control holds its speed within 1 km/h; the reading has steps of 1 km/h. */
  private static final double SLOWER_BY = 1.5;

  /**
   * Where no pressure is told: a climb of 6 % at 80 km/h takes 0.9 kPa a minute, and an engine
   * without a turbocharger loses 1 % with each (computed).
   */
  private static final double THINNER_PER_SECOND = 0.009 / 60;

  private final double ratedRpm;
  private final Deque<Pull> past = new ArrayDeque<>();
  private double most;

  PullMemory(OptionalDouble ratedRpm) {
    this.ratedRpm = ratedRpm.orElse(USUAL_RATED_RPM);
  }

  void forget() {
    past.clear();
    most = 0;
  }

  /** Takes the next pull; times do not run backwards. */
  void accept(Pull here) {
    past.addLast(here);
    while (here.seconds() - past.getFirst().seconds() > MEMORY_SECONDS) {
      past.removeFirst();
    }
    most = Math.max(most, here.strength());
  }

  /** The most that was given on this drive. */
  double most() {
    return most;
  }

  /** What was given so many seconds before a moment; what is given then if nothing is known. */
  Pull before(Pull now, double seconds) {
    return past.stream()
        .filter(each -> each.seconds() >= now.seconds() - seconds)
        .findFirst()
        .orElse(now);
  }

  /** The most that any earlier pull lets expect with the pedal as it is now. */
  double expectedByPedal(Pull now, PullBasis basis) {
    return past.stream().mapToDouble(each -> byPedal(each, now, basis)).max().orElse(0);
  }

  /** What one pull lets expect of another that asks for no less; 0 if nothing. */
  double byPedal(Pull before, Pull now, PullBasis basis) {
    boolean isFloored =
        before.leastPedal() >= FLOORED_PERCENT && now.leastPedal() >= FLOORED_PERCENT;
    double turned = Math.log(now.rpm() / before.rpm());
    if (isFloored) {
      return before.strength() * floored(turned, now, basis) * air(before, now);
    }
    boolean isAskedNoLess = before.mostPedal() <= now.leastPedal() + PEDAL_PERCENT;
    boolean isLikeNow =
        Math.abs(turned) <= SAME_RPM
            && isSameGear(before, now)
            && !(now.speed() > before.speed() + 1);
    return isAskedNoLess && isLikeNow && !isAtRatedEnd(turned, now)
        ? before.strength() * curve(turned) * air(before, now)
        : 0;
  }

  private double floored(double turned, Pull now, PullBasis basis) {
    if (isAtRatedEnd(turned, now)) {
      return 0;
    }
    double near = Math.abs(turned) <= NEAR_RPM ? curve(turned) : 0;
    // A full load is full at every speed; else a lower gear gives no less power.
    return basis == PullBasis.LOAD || turned <= SAME_RPM ? near : Math.exp(-turned);
  }

  private boolean isAtRatedEnd(double turned, Pull now) {
    return now.rpm() > RATED_SHARE * ratedRpm && turned > 0.01;
  }

  private static double curve(double turned) {
    return 1 - CURVE_PER_LOG_RPM * Math.abs(turned);
  }

  /**
   * The pull of the last minute that lets expect the most under cruise control.
   *
   * @param afterSeconds since when nobody has let go
   */
  Optional<Pull> bestBySpeed(Pull now, double afterSeconds) {
    double earliest = Math.max(afterSeconds, now.seconds() - CRUISE_MEMORY_SECONDS);
    return past.stream()
        .filter(each -> each.seconds() >= earliest && byCruise(each, now) > now.strength())
        .max(Comparator.comparingDouble(each -> byCruise(each, now)));
  }

  /** What an earlier pull lets expect of a slower one under cruise control; 0 if nothing. */
  double byCruise(Pull before, Pull now) {
    return isSameGear(before, now) && now.speed() <= before.speed() - SLOWER_BY
        ? before.strength() * curve(Math.log(now.rpm() / before.rpm())) * air(before, now)
        : 0;
  }

  private static boolean isSameGear(Pull before, Pull now) {
    return !(Math.abs(Math.log(now.turnsPerSpeed() / before.turnsPerSpeed())) > SAME_GEAR);
  }

  /** What thinner air leaves of a torque, at least. */
  private static double air(Pull before, Pull now) {
    return Double.isNaN(before.kilopascals() + now.kilopascals())
        ? Math.max(0, 1 - THINNER_PER_SECOND * (now.seconds() - before.seconds()))
        : Math.min(1, now.kilopascals() / before.kilopascals());
  }
}
