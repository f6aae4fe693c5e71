package steadypull.road.memory;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Tiles as they are needed: some in memory, all on the shelf. What has changed stays in memory
 * until it is saved or dropped. One thread.
 */
final class TilesAtHand {
  /** Tiles kept in memory: those around a vehicle and along what lies 15 km ahead. */
  private static final int TILES_AT_HAND = 48;

  private final TileShelf shelf;
  private final Map<TileKey, Tile> atHand = new LinkedHashMap<>(64, 0.75f, true);
  private final Set<TileKey> changed = new LinkedHashSet<>();
  private final Map<TileKey, DamagedTileException> damaged = new LinkedHashMap<>();

  TilesAtHand(TileShelf shelf) {
    this.shelf = shelf;
  }

  /** Notes that a tile is another now. */
  void changed(TileKey key) {
    changed.add(key);
  }

  /** Whether a tile that was asked for could not be read. */
  boolean isDamaged(TileKey key) {
    return damaged.containsKey(key);
  }

  /** Takes a tile that could not be read for an empty one; false if it is none of these. */
  boolean giveUp(TileKey key) {
    return damaged.remove(key) != null;
  }

  /** Puts what has changed on the shelf and says which tiles these were. */
  Set<TileKey> save() {
    Set<TileKey> saved = new HashSet<>(changed);
    saved.removeAll(damaged.keySet());
    if (!saved.isEmpty()) {
      Map<TileKey, byte[]> filled = new LinkedHashMap<>();
      Set<TileKey> emptied = new LinkedHashSet<>();
      for (TileKey key : saved) {
        Tile tile = tile(key);
        if (tile.isEmpty()) {
          emptied.add(key);
        } else {
          filled.put(key, TileFormat.encode(key, tile));
        }
      }
      shelf.save(filled, emptied);
      emptied.forEach(atHand::remove);
    }
    changed.clear();
    trim();
    return saved;
  }

  /** Forgets all that was not saved. */
  void drop() {
    atHand.clear();
    damaged.clear();
    changed.clear();
  }

  /** Reads those tiles anew when they are asked for. */
  void reread(Set<TileKey> keys) {
    keys.forEach(
        key -> {
          atHand.remove(key);
          damaged.remove(key);
        });
  }

  /** Tiles that could not be read, with what was found. */
  List<DamagedTileException> damaged() {
    return List.copyOf(damaged.values());
  }

  /** Octets of the tiles in memory, about. */
  long octets() {
    return atHand.values().stream().mapToLong(Tile::octets).sum();
  }

  /** The tile of that key, from memory or from the shelf; an empty one where there is none. */
  Tile tile(TileKey key) {
    Tile tile = atHand.get(key);
    if (tile == null) {
      tile = load(key);
      trim();
      atHand.put(key, tile);
    }
    return tile;
  }

  private Tile load(TileKey key) {
    Optional<byte[]> octets = shelf.load(key);
    if (octets.isEmpty() || damaged.containsKey(key)) {
      return new Tile();
    }
    try {
      return TileFormat.decode(key, octets.get());
    } catch (DamagedTileException broken) {
      damaged.put(key, broken);
      return new Tile();
    }
  }

  private void trim() {
    if (changed.isEmpty()) {
      var eldest = atHand.keySet().iterator();
      while (atHand.size() >= TILES_AT_HAND && eldest.hasNext()) {
        eldest.next();
        eldest.remove();
      }
    }
  }
}
