package steadypull.compare;

import java.util.Objects;
import java.util.Optional;

/**
 * A trip, or a part of one, to take runs from. Immutable.
 *
 * @param trip second by second
 * @param side before or after
 * @param place of its group in the order in which sides were told, 0 first
 * @param span the part that counts; empty: the whole trip
 */
public record RunSource(TripSeconds trip, Side side, int place, Optional<TripPart.Span> span) {
  public RunSource {
    Objects.requireNonNull(trip);
    Objects.requireNonNull(side);
    Objects.requireNonNull(span);
    if (place < 0) {
      throw new IllegalArgumentException("Places count from 0, found " + place);
    }
  }
}
