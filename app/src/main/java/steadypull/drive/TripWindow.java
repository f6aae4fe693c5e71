package steadypull.drive;

import steadypull.store.TripSummary;

/**
 * A span of a trip that is looked at. Immutable.
 *
 * @param fromMicros first moment, microseconds since the start of the trip
 * @param toMicros the first moment after it
 */
public record TripWindow(long fromMicros, long toMicros) {
  /** A narrower one would show less than what one answer of the vehicle brings. */
  static final long NARROWEST_MICROS = 2_000_000;

  public TripWindow {
    if (toMicros <= fromMicros) {
      throw new IllegalArgumentException(
          "A window ends after it begins, found %d to %d us".formatted(fromMicros, toMicros));
    }
  }

  /** From the start of a trip to its end. */
  public static TripWindow whole(TripSummary trip) {
    return new TripWindow(0, Math.max(1, Math.round(trip.durationSeconds() * 1e6)) + 1);
  }

  /** How long it is. */
  public long widthMicros() {
    return toMicros - fromMicros;
  }

  /**
   * A window in which everything is so many times as wide, or the narrowest one, within limits.
   *
   * @param times more than 1 to come closer, less to step back
   * @param share of this window's width at which the picture stands still, 0 to 1
   * @param limits that the result does not leave
   */
  public TripWindow magnified(double times, double share, TripWindow limits) {
    long narrowest = Math.min(NARROWEST_MICROS, limits.widthMicros());
    long width = Math.clamp(Math.round(widthMicros() / times), narrowest, limits.widthMicros());
    return at(Math.round(fromMicros + share * (widthMicros() - width)), width, limits);
  }

  /**
   * A window as wide that begins later, as far as limits allow.
   *
   * @param share by how much of its width; negative: earlier
   */
  public TripWindow moved(double share, TripWindow limits) {
    return at(fromMicros + Math.round(share * widthMicros()), widthMicros(), limits);
  }

  private static TripWindow at(long from, long width, TripWindow limits) {
    long within = Math.clamp(from, limits.fromMicros, limits.toMicros - width);
    return new TripWindow(within, within + width);
  }
}
