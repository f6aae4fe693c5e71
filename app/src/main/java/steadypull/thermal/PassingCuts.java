package steadypull.thermal;

import java.util.OptionalDouble;

/**
 * Cuts that pass by themselves in seconds: boost that builds, a gear that changes, wheels that
 * slip. They keep a derate from beginning, not from lasting. Pipeline thread only.
 */
final class PassingCuts {
  /** While demand rose by so much within the turbo's time, boost is still building. */
  private static final double DEMAND_RISE_PERCENT = 10;

  /** Turbo lag and smoke limit, 2 to 4 s (common practice, no source). */
  private static final double BOOST_SECONDS = 4;

  private static final double GEAR_SECONDS = 3;

  /** Neighbouring gears lie 15 % or more apart (common practice, no source). */
  private static final double GEAR_STEP = 0.12;

  /** Stability control lets go within a few seconds (common practice, no source). */
  private static final double SLIP_SECONDS = 5;

  /** No rig gains 2.5 m/s2 on its wheels' grip with a trailer behind it (estimated). */
  private static final double SLIP_KILOMETRES_PER_HOUR_PER_SECOND = 9;

  private double settledDemand;
  private double demandRoseAt = Double.NEGATIVE_INFINITY;
  private double gearChangedAt = Double.NEGATIVE_INFINITY;
  private double slippedAt = Double.NEGATIVE_INFINITY;
  private OptionalDouble lastGear = OptionalDouble.empty();
  private OptionalDouble lastTurns = OptionalDouble.empty();
  private OptionalDouble lastSpeed = OptionalDouble.empty();
  private double lastSeconds;

  /** Takes a moment; times do not run backwards. */
  void accept(PullMoment now) {
    watchDemand(now);
    watchGear(now);
    watchWheels(now);
    lastSeconds = now.seconds();
  }

  /** Whether a cut that begins now would be explained. */
  boolean isOne(double seconds) {
    return seconds - demandRoseAt < BOOST_SECONDS
        || seconds - gearChangedAt < GEAR_SECONDS
        || seconds - slippedAt < SLIP_SECONDS;
  }

  private void watchDemand(PullMoment now) {
    OptionalDouble asked =
        now.demandedPercent().isPresent() ? now.demandedPercent() : now.pedalPercent();
    if (asked.isEmpty()) {
      return;
    }
    double percent = asked.getAsDouble();
    if (percent > settledDemand + DEMAND_RISE_PERCENT) {
      demandRoseAt = now.seconds();
      settledDemand = percent;
    }
    settledDemand = Math.min(percent, settledDemand);
  }

  private void watchGear(PullMoment now) {
    OptionalDouble gear = now.gear();
    OptionalDouble turns = now.turnsPerSpeed();
    boolean isTold = gear.isPresent() && lastGear.isPresent() && !gear.equals(lastGear);
    if (isTold || hasLeapt(turns)) {
      gearChangedAt = now.seconds();
    }
    lastGear = gear.isPresent() ? gear : lastGear;
    lastTurns = turns;
  }

  private boolean hasLeapt(OptionalDouble turns) {
    return turns.isPresent()
        && lastTurns.isPresent()
        && Math.abs(Math.log(turns.getAsDouble() / lastTurns.getAsDouble())) > GEAR_STEP;
  }

  private void watchWheels(PullMoment now) {
    OptionalDouble speed = now.kilometresPerHour();
    double step = Math.max(1, now.seconds() - lastSeconds);
    if (speed.isPresent()
        && lastSpeed.isPresent()
        && speed.getAsDouble() - lastSpeed.getAsDouble()
            > SLIP_KILOMETRES_PER_HOUR_PER_SECOND * step) {
      slippedAt = now.seconds();
    }
    lastSpeed = speed;
  }
}
