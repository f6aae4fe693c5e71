package steadypull.drive;

import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import steadypull.road.memory.TileKey;
import steadypull.road.memory.TileShelf;

/**
 * The tiles around a vehicle, as somebody else has read them: a look ahead never waits for a disk.
 * What a trip learns on its way lies over them, in memory alone, at most so many tiles, the latest.
 * Pipeline thread only.
 */
final class LoadedTiles implements TileShelf {
  /** Some 2000 km of winding roads, and a few megabytes with what else was known there. */
  private static final int MOST_LEARNED = 300;

  private final Map<TileKey, byte[]> learned = new LinkedHashMap<>(16, 0.75f, true);
  private Map<TileKey, byte[]> tiles = Map.of();

  /**
   * Has these tiles at hand from now on, in place of those before. What this trip has added to a
   * tile that was learned or forgotten anew elsewhere goes with the tile that it was added to.
   *
   * @param isSamePlace whether they lie around the same place as those before, so that a tile that
   *     is missing now was forgotten and not left behind
   * @return the tiles that were not there before, are not there any more, or are others
   */
  Set<TileKey> take(Map<TileKey, byte[]> loaded, boolean isSamePlace) {
    Set<TileKey> changed = new HashSet<>(tiles.keySet());
    changed.addAll(loaded.keySet());
    changed.removeIf(key -> Arrays.equals(tiles.get(key), loaded.get(key)));
    Set<TileKey> renewed = new HashSet<>(changed);
    if (!isSamePlace) {
      renewed.removeIf(key -> !tiles.containsKey(key) || !loaded.containsKey(key));
    }
    learned.keySet().removeAll(renewed);
    tiles = loaded;
    return changed;
  }

  @Override
  public Optional<byte[]> load(TileKey key) {
    byte[] own = learned.get(key);
    return own == null ? Optional.ofNullable(tiles.get(key)) : Optional.of(own);
  }

  @Override
  public void save(Map<TileKey, byte[]> changed, Set<TileKey> emptied) {
    learned.putAll(changed);
    learned.keySet().removeAll(emptied);
    var eldest = learned.keySet().iterator();
    while (learned.size() > MOST_LEARNED) {
      eldest.next();
      eldest.remove();
    }
  }
}
