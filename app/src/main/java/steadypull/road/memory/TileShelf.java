package steadypull.road.memory;

import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Where tiles of the road memory lie while nobody looks at them. Used by the thread that uses the
 * memory.
 */
public interface TileShelf {
  /** The octets of a tile as they were saved, or empty if there is none. */
  Optional<byte[]> load(TileKey key);

  /**
   * Takes what a pass or a request to forget has changed: all of it or, if that fails, nothing.
   *
   * @param changed tiles with their octets, in place of those that were there
   * @param emptied tiles in which nothing is known any more, to be removed
   */
  void save(Map<TileKey, byte[]> changed, Set<TileKey> emptied);
}
