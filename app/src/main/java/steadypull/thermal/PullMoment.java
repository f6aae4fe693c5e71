package steadypull.thermal;

import java.util.OptionalDouble;
import steadypull.channel.Channels;
import steadypull.road.LatestSamples;

/**
 * What is asked of an engine and what it gives, at one moment. Immutable; what is too old is empty.
 *
 * @param seconds since trip start
 * @param demandedPercent of the reference torque
 * @param deliveredPercent of the reference torque
 * @param pedalPercent 0 to 100; 0 also under cruise control
 * @param engineRpm r/min
 * @param kilometresPerHour road speed
 * @param gear as told
 * @param kilopascals of outside air, absolute
 * @param isRegenerating whether the particulate filter regenerates
 */
record PullMoment(
    double seconds,
    OptionalDouble demandedPercent,
    OptionalDouble deliveredPercent,
    OptionalDouble pedalPercent,
    OptionalDouble engineRpm,
    OptionalDouble kilometresPerHour,
    OptionalDouble gear,
    OptionalDouble kilopascals,
    boolean isRegenerating) {
  private static final double MICROS_PER_SECOND = 1e6;
  private static final double FRESH_SECONDS = 5;

  /** Weather and height change slowly. */
  private static final double PRESSURE_FRESH_SECONDS = 60;

  private static final double REGENERATION_FRESH_SECONDS = 30;

  /** Below this 1 km/h is too much of the whole. */
  private static final double SLOWEST_KILOMETRES_PER_HOUR = 20;

  /** The last samples of a drive. */
  static PullMoment of(LatestSamples samples, long timeMicros) {
    return new PullMoment(
        timeMicros / MICROS_PER_SECOND,
        samples.within(Channels.DEMANDED_TORQUE, timeMicros, FRESH_SECONDS),
        samples.within(Channels.DELIVERED_TORQUE, timeMicros, FRESH_SECONDS),
        samples.within(Channels.ACCELERATOR_PEDAL, timeMicros, FRESH_SECONDS),
        samples.within(Channels.ENGINE_SPEED, timeMicros, FRESH_SECONDS),
        samples.within(Channels.VEHICLE_SPEED, timeMicros, FRESH_SECONDS),
        samples.within(Channels.GEAR, timeMicros, FRESH_SECONDS),
        samples.within(Channels.BAROMETRIC_PRESSURE, timeMicros, PRESSURE_FRESH_SECONDS),
        samples
                .within(Channels.FILTER_REGENERATION, timeMicros, REGENERATION_FRESH_SECONDS)
                .orElse(0)
            >= 0.5);
  }

  /** Whether demanded and delivered torque are both told. */
  boolean isTorqueTold() {
    return demandedPercent.isPresent() && deliveredPercent.isPresent();
  }

  /** Engine turns per road speed, r/min for each km/h; empty at a crawl. */
  OptionalDouble turnsPerSpeed() {
    double speed = kilometresPerHour.orElse(0);
    return engineRpm.isPresent() && speed >= SLOWEST_KILOMETRES_PER_HOUR
        ? OptionalDouble.of(engineRpm.getAsDouble() / speed)
        : OptionalDouble.empty();
  }
}
