package steadypull.store;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Samples of a trip that cannot be read any more. Immutable.
 *
 * @param tripId of the trip; where even that is lost, what can be said of it
 * @param isWholeTrip whether nothing of the trip is left
 * @param fromSeconds no sample before that is lost; seconds since the start of the trip
 * @param toSeconds no sample after that is lost; empty: nobody can tell
 */
public record LostPart(
    String tripId, boolean isWholeTrip, double fromSeconds, OptionalDouble toSeconds) {
  private static final double MICROS_PER_SECOND = 1e6;

  public LostPart {
    Objects.requireNonNull(tripId);
    Objects.requireNonNull(toSeconds);
  }

  static LostPart piece(String tripId, long fromMicros, long toMicros) {
    return new LostPart(tripId, false, seconds(fromMicros), OptionalDouble.of(seconds(toMicros)));
  }

  private static double seconds(long micros) {
    return micros / MICROS_PER_SECOND;
  }
}
