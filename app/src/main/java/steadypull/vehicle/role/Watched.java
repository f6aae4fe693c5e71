package steadypull.vehicle.role;

import java.util.Optional;
import java.util.OptionalDouble;

/** One sensor under watch: what it read last, its slow mean, and its record. */
final class Watched {
  /** Sensors whose place is in question may be asked for every 10 s only. */
  private static final long FRESH_MICROS = 15_000_000;

  /** Movements within this are quick (estimated). */
  private static final double SLOW_SECONDS = 30;

  private final SlowMean slow = new SlowMean(SLOW_SECONDS);
  private Optional<SensorRecord> known;
  private OptionalDouble latest = OptionalDouble.empty();
  private long readMicros;

  /** A sensor never seen before. */
  Watched() {
    known = Optional.empty();
  }

  /** A sensor seen on an earlier drive. */
  Watched(SensorRecord before) {
    known = Optional.of(before);
  }

  Optional<SensorRecord> known() {
    return known;
  }

  void read(long micros, double celsius) {
    readMicros = micros;
    latest = OptionalDouble.of(celsius);
  }

  /** What it reads now; empty if it has not been heard for a while. */
  OptionalDouble reading(long now) {
    return now - readMicros <= FRESH_MICROS ? latest : OptionalDouble.empty();
  }

  /** The coolest that it was, as far as is known. */
  OptionalDouble coolest() {
    return known.isPresent() ? OptionalDouble.of(known.get().lowest()) : latest;
  }

  /** Takes one second with the engine running. */
  void take(long now, Moment moment) {
    OptionalDouble reading = reading(now);
    if (reading.isPresent()) {
      double celsius = reading.getAsDouble();
      double fromSlow = celsius - slow.next(now, celsius);
      known =
          Optional.of(
              known.orElseGet(() -> SensorRecord.of(celsius)).with(celsius, fromSlow, moment));
    }
  }

  /** Notes by how much it differs from outside air after a rest. */
  void rested(double celsius, double outsideCelsius) {
    SensorRecord record = known.orElseGet(() -> SensorRecord.of(celsius));
    known = Optional.of(record.withSoak(celsius - outsideCelsius));
  }

  /** Notes how far it is from the engine's water. */
  void apart(double kelvin) {
    known = known.map(record -> record.withGap(kelvin));
  }
}
