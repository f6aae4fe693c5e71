package steadypull.advice;

import java.util.OptionalDouble;
import steadypull.thermal.Forecast;

/** What the model says would help. A closed set. */
sealed interface Remedy {
  /**
   * Let speed fall.
   *
   * @param kilometresPerHour the advised speed
   * @param eased the forecast at that speed
   * @param holdsAt the speed that would hold, where one step is not enough; empty if it is enough
   */
  record EaseTo(double kilometresPerHour, Forecast eased, OptionalDouble holdsAt)
      implements Remedy {}

  /**
   * Switch the air conditioning off, which is known to be on.
   *
   * @param changed the forecast without it
   */
  record AirConditioningOff(Forecast changed) implements Remedy {}

  /**
   * Take one gear lower, which this drive has shown.
   *
   * @param changed the forecast in that gear
   */
  record GearLower(Forecast changed) implements Remedy {}

  /**
   * No advisable speed holds.
   *
   * @param kilometresPerHour the lowest speed that was tried, or the present one if lower
   * @param forecast the forecast at that speed, the least bad that the road allows
   * @param stopped the forecast of the engine idling where the rig stops
   */
  record NextParkingArea(double kilometresPerHour, Forecast forecast, Forecast stopped)
      implements Remedy {}

  /** Less load helps, but no figure could be checked. */
  record EaseOff() implements Remedy {}

  /** On a descent nothing is asked of speed. */
  record OnDescent() implements Remedy {}

  /** Hardly moving: the engine may idle, nothing is asked of speed. */
  record Standing() implements Remedy {}
}
