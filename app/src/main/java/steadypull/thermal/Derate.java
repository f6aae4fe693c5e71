package steadypull.thermal;

import java.util.Objects;
import java.util.Optional;
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
   * @param cutPercent what is missing, percentage points of the reference torque; of the torque
   *     that the engine gave before where demanded and delivered torque are not told
   * @param loss the same in absolute units; empty where nothing tells the engine's torque
   */
  record Active(Channel cause, long sinceMicros, double cutPercent, Optional<Loss> loss)
      implements Derate {
    public Active {
      Objects.requireNonNull(cause);
      Objects.requireNonNull(loss);
    }

    /** A derate of an engine whose torque is told in per cent only. */
    public Active(Channel cause, long sinceMicros, double cutPercent) {
      this(cause, sinceMicros, cutPercent, Optional.empty());
    }
  }

  /**
   * Power is down at no hot channel: nothing that easing will bring back.
   *
   * @param sinceMicros when it began, microseconds since trip start
   * @param cutPercent percentage points of the reference torque
   */
  record PowerLimited(long sinceMicros, double cutPercent) implements Derate {}

  /**
   * What is missing at the crankshaft.
   *
   * @param newtonMetres 0 or more
   * @param kilowatts 0 or more
   */
  record Loss(double newtonMetres, double kilowatts) {
    /** P in kW of torque in N.m and speed in r/min: 60000 / (2 pi). */
    static final double NEWTON_METRE_RPM_PER_KILOWATT = 9549.297;

    /** A torque that is missing at an engine speed. */
    static Loss of(double newtonMetres, double engineRpm) {
      return new Loss(newtonMetres, newtonMetres * engineRpm / NEWTON_METRE_RPM_PER_KILOWATT);
    }
  }
}
