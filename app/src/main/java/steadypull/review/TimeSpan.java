package steadypull.review;

/**
 * A span of a trip. Immutable.
 *
 * @param fromMicros since the trip began
 * @param toMicros since the trip began, later
 */
record TimeSpan(long fromMicros, long toMicros) {
  private static final double MICROS_PER_SECOND = 1e6;

  /** Of what was told in fewer of its seconds, no sum is told (our choice). */
  private static final double LEAST_SHARE = 0.95;

  static TimeSpan ofSeconds(double from, double to) {
    return new TimeSpan(Math.round(from * MICROS_PER_SECOND), Math.round(to * MICROS_PER_SECOND));
  }

  /** Whether a moment lies in it; its end does, its beginning does not. */
  boolean holds(long micros) {
    return micros > fromMicros && micros <= toMicros;
  }

  /** Whether something told in so many of its seconds is known well enough to be summed up. */
  boolean isMostlyTold(long seconds) {
    return seconds >= LEAST_SHARE * Math.floor((toMicros - fromMicros) / MICROS_PER_SECOND);
  }
}
