package steadypull.store;

import java.util.List;
import java.util.Objects;

/**
 * What became of a trip that came as a file. Immutable.
 *
 * @param id the id that the trip has in this library
 * @param way whether it is new here
 * @param kept what the file tells otherwise and what was left as it is here, such as {@code note}
 */
public record MergedTrip(String id, Way way, List<String> kept) {
  public MergedTrip {
    Objects.requireNonNull(id);
    Objects.requireNonNull(way);
    kept = List.copyOf(kept);
  }

  /** The closed set of ways. */
  public enum Way {
    /** The library did not know the trip. */
    ADDED,
    /** It had been thrown away here and is back. */
    BROUGHT_BACK,
    /** It is here already. */
    ALREADY_HERE
  }
}
