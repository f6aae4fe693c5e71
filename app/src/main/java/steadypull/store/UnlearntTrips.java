package steadypull.store;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Trips that could not be learnt from by a fault of the program, not of the library: each is left
 * out for as long as the library is open, so that the others are learnt from, and waits for the
 * next time. Any thread.
 */
final class UnlearntTrips {
  private final String tried;
  private final Map<String, String> toldByOrigin = new LinkedHashMap<>();

  /**
   * None yet.
   *
   * @param tried what is learnt, such as {@code learn the roads}
   */
  UnlearntTrips(String tried) {
    this.tried = tried;
  }

  synchronized boolean has(String origin) {
    return toldByOrigin.containsKey(origin);
  }

  synchronized void add(String origin, String tripId, RuntimeException fault) {
    toldByOrigin.put(
        origin,
        "Could not %s of trip %s: expected to get through all of it, found %s%s. The trip itself is whole and other trips are learnt from; it is tried again when the library is opened next. Please tell the makers."
            .formatted(
                tried,
                tripId,
                fault.getClass().getSimpleName(),
                Optional.ofNullable(fault.getMessage())
                    .map(words -> " (" + words + ")")
                    .orElse("")));
  }

  /** What to tell of each, in the order in which they failed. */
  synchronized List<String> told() {
    return List.copyOf(toldByOrigin.values());
  }
}
