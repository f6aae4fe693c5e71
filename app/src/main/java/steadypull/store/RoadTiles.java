package steadypull.store;

import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import steadypull.road.memory.DamagedTileException;
import steadypull.road.memory.TileContents;
import steadypull.road.memory.TileKey;

/** The tiles of the memory of roads as rows. Inside somebody else's transaction. */
final class RoadTiles {
  private final Handle handle;

  RoadTiles(Handle handle) {
    this.handle = handle;
  }

  /** The octets of a tile, or empty if nothing is known there. */
  Optional<byte[]> find(long tileKey) {
    return handle
        .createQuery(Sql.of("selectRoadTile"))
        .bind("tileKey", tileKey)
        .mapTo(byte[].class)
        .findOne();
  }

  /** The numbers of all tiles, ascending. */
  List<Long> keys() {
    return handle.createQuery(Sql.of("selectRoadTileKeys")).mapTo(Long.class).list();
  }

  /** Whether those are the octets of that tile, every one of them. */
  static boolean isWhole(long tileKey, byte[] tile) {
    try {
      TileContents.of(TileKey.ofNumber(Math.toIntExact(tileKey)), tile);
      return true;
    } catch (DamagedTileException | ArithmeticException | IllegalArgumentException e) {
      return false;
    }
  }

  /** How much of roads a tile holds; nothing if it is damaged. */
  static TileContents contents(long tileKey, byte[] tile) {
    try {
      return TileContents.of(TileKey.ofNumber(Math.toIntExact(tileKey)), tile);
    } catch (DamagedTileException e) {
      // Roads there count as unknown wherever they are asked for.
      return TileContents.NOTHING;
    }
  }

  /** Keeps a tile in place of what was there. */
  void save(long tileKey, byte[] tile) {
    handle
        .createUpdate(Sql.of("saveRoadTile"))
        .bind("tileKey", tileKey)
        .bind("tile", tile)
        .execute();
  }

  void delete(long tileKey) {
    handle.createUpdate(Sql.of("deleteRoadTile")).bind("tileKey", tileKey).execute();
  }

  void deleteAll() {
    handle.createUpdate(Sql.of("deleteRoadTiles")).execute();
  }
}
