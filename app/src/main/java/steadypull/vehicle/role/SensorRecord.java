package steadypull.vehicle.role;

import java.util.OptionalDouble;

/**
 * What is remembered of one sensor. Immutable.
 *
 * @param lowest lowest reading with the engine running, degC
 * @param highest highest reading with the engine running, degC; not under the lowest
 * @param boost what it read under boost
 * @param trend how it goes with boost
 * @param gap how far it is from the engine's water, if it is a water sensor
 * @param soakKelvin by how much it differed from outside air before the last start after hours of
 *     rest; empty if no such start was seen
 */
record SensorRecord(
    double lowest,
    double highest,
    BoostMeans boost,
    BoostTrend trend,
    WaterGap gap,
    OptionalDouble soakKelvin) {
  /** Beyond this the past counts half, so that a sensor that was moved is seen to be elsewhere. */
  static final double MOST_SECONDS = 3600;

  /**
   * A sensor that moves less than this through all that the engine does stands still; estimated.
   */
  private static final double STUCK_KELVIN = 3;

  /** After a rest all is as warm as the air around; sun and a late fan excuse this much. */
  private static final double SOAK_KELVIN = 10;

  SensorRecord {
    if (!(lowest <= highest)) {
      throw new IllegalArgumentException(
          "A lowest reading is not above the highest, found %s and %s".formatted(lowest, highest));
    }
  }

  /** A sensor that has read once. */
  static SensorRecord of(double reading) {
    return new SensorRecord(
        reading,
        reading,
        BoostMeans.none(),
        BoostTrend.none(),
        WaterGap.none(),
        OptionalDouble.empty());
  }

  /** Takes one second with the engine running. */
  SensorRecord with(double reading, double fromSlowKelvin, Moment moment) {
    return new SensorRecord(
        Math.min(lowest, reading),
        Math.max(highest, reading),
        moment.isUnderBoost() ? boost.with(reading, moment) : boost,
        moment.isMoving() ? trend.with(reading, fromSlowKelvin, moment) : trend,
        gap,
        soakKelvin);
  }

  SensorRecord withGap(double distanceKelvin) {
    return new SensorRecord(lowest, highest, boost, trend, gap.with(distanceKelvin), soakKelvin);
  }

  SensorRecord withSoak(double kelvin) {
    return new SensorRecord(lowest, highest, boost, trend, gap, OptionalDouble.of(kelvin));
  }

  /** Whether it has stood still while the engine did enough to move every sensor of its kind. */
  boolean isStuck(double afterSeconds) {
    return boost.seconds() >= afterSeconds && highest - lowest < STUCK_KELVIN;
  }

  boolean isOffAfterRest() {
    return soakKelvin.isPresent() && Math.abs(soakKelvin.getAsDouble()) > SOAK_KELVIN;
  }
}
