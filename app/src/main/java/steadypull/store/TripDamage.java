package steadypull.store;

import java.util.List;
import java.util.Objects;

/**
 * What of a trip cannot be read where the library is damaged. Immutable.
 *
 * @param tripId of the trip
 * @param parts samples, in their order
 * @param areEventsLost whether events cannot be read either
 */
public record TripDamage(String tripId, List<LostPart> parts, boolean areEventsLost) {
  public TripDamage {
    Objects.requireNonNull(tripId);
    parts = List.copyOf(parts);
  }

  /** Whether everything can be read. */
  public boolean isNone() {
    return parts.isEmpty() && !areEventsLost;
  }

  /** How many samples cannot be read. */
  public long samples() {
    return parts.stream().mapToLong(LostPart::samples).sum();
  }
}
