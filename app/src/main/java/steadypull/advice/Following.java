package steadypull.advice;

import java.util.OptionalDouble;

/** Sees whether a driver does what is advised. One thread. */
final class Following {
  /** Within this of the advised speed, and half-way to it, the driver follows. */
  private static final double FOLLOWS_WITHIN_KM_H = 2.5;

  /** Neighbouring gears lie at least so far apart (common practice, no source). */
  private static final double GEAR_STEP = 1.1;

  private OptionalDouble turningBefore = OptionalDouble.empty();
  private double speedBefore;
  private boolean isGearTaken;

  /** Another advisory begins. */
  void begins() {
    turningBefore = OptionalDouble.empty();
    isGearTaken = false;
  }

  /** Something is advised from this moment on. */
  void advised(SituationFacts facts) {
    turningBefore = facts.turning();
    speedBefore = facts.speed().orElse(0);
  }

  /** Whether a gear that was advised has been taken since the advisory began. */
  boolean isGearTaken() {
    return isGearTaken;
  }

  /** Whether it is done now. */
  boolean isSeen(Remedy remedy, SituationFacts facts) {
    return switch (remedy) {
      case Remedy.EaseTo ease ->
          facts.speed().isPresent()
              && facts.speed().getAsDouble() <= ease.kilometresPerHour() + near(ease);
      case Remedy.GearLower _ -> isGearSeen(facts);
      case Remedy.AirConditioningOff _ -> facts.isAirConditioningOff();
      case Remedy.NextParkingArea _ ->
          facts.speed().isPresent()
              && facts.speed().getAsDouble() < RemedySearch.HARDLY_MOVING_KM_H;
      case Remedy.EaseOff _, Remedy.OnDescent _, Remedy.Standing _ -> false;
    };
  }

  private double near(Remedy.EaseTo ease) {
    return Math.min(FOLLOWS_WITHIN_KM_H, (speedBefore - ease.kilometresPerHour()) / 2);
  }

  private boolean isGearSeen(SituationFacts facts) {
    OptionalDouble now = facts.turning();
    isGearTaken |=
        now.isPresent()
            && turningBefore.isPresent()
            && now.getAsDouble() >= GEAR_STEP * turningBefore.getAsDouble();
    return isGearTaken;
  }
}
