package steadypull.drive;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import steadypull.road.memory.TileKey;
import steadypull.road.memory.TileShelf;

/**
 * The tiles around a vehicle, as somebody else has read them: a look ahead never waits for a disk.
 * Pipeline thread only.
 */
final class LoadedTiles implements TileShelf {
  private Map<TileKey, byte[]> tiles = Map.of();

  /** Has these tiles at hand from now on, in place of those before. */
  void take(Map<TileKey, byte[]> loaded) {
    tiles = loaded;
  }

  @Override
  public Optional<byte[]> load(TileKey key) {
    return Optional.ofNullable(tiles.get(key));
  }

  @Override
  public void save(Map<TileKey, byte[]> changed, Set<TileKey> emptied) {
    throw new IllegalStateException("Who drives looks, and learns only afterwards");
  }
}
