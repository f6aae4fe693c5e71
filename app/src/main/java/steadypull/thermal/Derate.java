package steadypull.thermal;

import java.util.Objects;
import steadypull.channel.Channel;

/** Whether the engine control is cutting torque to save itself. A closed set. */
public sealed interface Derate {

  /** No cut, or not enough channels to tell. */
  record None() implements Derate {}

  /**
   * Torque is being cut at a hot channel.
   *
   * @param cause the channel nearest to, or furthest over, its limit
   * @param sinceMicros when the cut began, microseconds since trip start
   * @param cutPercent demanded less delivered torque, percentage points of the reference torque
   */
  record Active(Channel cause, long sinceMicros, double cutPercent) implements Derate {
    public Active {
      Objects.requireNonNull(cause);
    }
  }

  /**
   * Power is down at no hot channel: nothing that easing will bring back.
   *
   * @param sinceMicros when it began, microseconds since trip start
   * @param cutPercent percentage points of the reference torque
   */
  record PowerLimited(long sinceMicros, double cutPercent) implements Derate {}
}
