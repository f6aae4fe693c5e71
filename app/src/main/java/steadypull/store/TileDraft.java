package steadypull.store;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import steadypull.road.memory.TileContents;
import steadypull.road.memory.TileKey;
import steadypull.road.memory.TileShelf;

/**
 * What learning or forgetting is about to change, before it is kept: tiles are read from the
 * library as they are needed, changes stay here until {@link #keep}. So the library is locked for
 * writing no longer than it takes to write. One thread.
 */
final class TileDraft implements TileShelf {
  private final LibraryConnection connection;

  /** As they were read; empty: nothing was known there. */
  private final Map<TileKey, Optional<byte[]>> found = new HashMap<>();

  /** As they are to be; empty: nothing is known there any more. */
  private final Map<TileKey, Optional<byte[]>> changed = new HashMap<>();

  TileDraft(LibraryConnection connection) {
    this.connection = connection;
  }

  @Override
  public Optional<byte[]> load(TileKey key) {
    Optional<byte[]> draft = changed.get(key);
    return draft == null ? found.computeIfAbsent(key, this::read) : draft;
  }

  @Override
  public void save(Map<TileKey, byte[]> tiles, Set<TileKey> emptied) {
    tiles.forEach((key, tile) -> changed.put(key, Optional.of(tile)));
    emptied.forEach(key -> changed.put(key, Optional.empty()));
  }

  /**
   * Keeps the changes inside a transaction.
   *
   * @return false, with nothing kept, if somebody has changed one of these tiles meanwhile
   */
  boolean keep(Handle handle) {
    RoadTiles tiles = new RoadTiles(handle);
    for (TileKey key : changed.keySet()) {
      Optional<byte[]> before = found.getOrDefault(key, Optional.empty());
      if (!isSame(before, tiles.find(key.number()))) {
        return false;
      }
    }
    changed.forEach(
        (key, tile) ->
            tile.ifPresentOrElse(
                octets -> tiles.save(key.number(), octets), () -> tiles.delete(key.number())));
    return true;
  }

  /** What the tiles that are to change held before. */
  TileContents contentsBefore() {
    return contents(key -> found.getOrDefault(key, Optional.empty()));
  }

  /** What they hold now. */
  TileContents contentsAfter() {
    return contents(key -> changed.getOrDefault(key, Optional.empty()));
  }

  private TileContents contents(Function<TileKey, Optional<byte[]>> tiles) {
    return changed.keySet().stream()
        .flatMap(key -> contents(key, tiles.apply(key)).stream())
        .reduce(TileContents.NOTHING, TileContents::plus);
  }

  private static Optional<TileContents> contents(TileKey key, Optional<byte[]> tile) {
    return tile.map(octets -> RoadTiles.contents(key.number(), octets));
  }

  private static boolean isSame(Optional<byte[]> one, Optional<byte[]> other) {
    return Arrays.equals(one.orElse(null), other.orElse(null));
  }

  private Optional<byte[]> read(TileKey key) {
    try {
      return connection.ask(
          "read what is known of roads", handle -> new RoadTiles(handle).find(key.number()));
    } catch (LibraryException e) {
      throw new UnreadableTile(e);
    }
  }

  /** Carries a fault of the library through the memory of roads, which knows no library. */
  @SuppressWarnings("serial") // never serialised
  static final class UnreadableTile extends RuntimeException {
    final LibraryException fault;

    UnreadableTile(LibraryException fault) {
      super(fault);
      this.fault = fault;
    }
  }
}
