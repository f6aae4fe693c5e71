package steadypull.store;

import java.util.Optional;
import org.jdbi.v3.core.Handle;
import steadypull.road.memory.RoadMemory;
import steadypull.road.memory.TileContents;
import steadypull.road.memory.TileKey;
import steadypull.road.memory.TilesAround;
import steadypull.store.TileDraft.UnreadableTile;

/**
 * Forgets roads. The library overwrites what is deleted, so that nothing of it is left in its file;
 * backups that were made before keep theirs. Any thread.
 */
final class RoadForgetting {
  private final LibraryConnection connection;

  RoadForgetting(LibraryConnection connection) {
    this.connection = connection;
  }

  /** Forgets everything, also what trips that have ended could still teach. */
  Forgotten all() throws LibraryException {
    return connection.change(
        "forget the roads",
        handle -> {
          TileContents known = TileContents.NOTHING;
          RoadTiles tiles = new RoadTiles(handle);
          for (long number : tiles.keys()) {
            known = known.plus(RoadTiles.contents(number, tiles.find(number).orElseThrow()));
          }
          int climbs = ClimbRows.all(handle).size();
          tiles.deleteAll();
          ClimbRows.deleteAll(handle);
          RoadRows.allLearned(handle);
          return new Forgotten(known.pieces(), known.metres(), climbs);
        });
  }

  /** Forgets what lies at a place, and keeps the place quiet. */
  Forgotten around(QuietPlace place) throws LibraryException {
    try {
      Optional<Forgotten> forgotten = Optional.empty();
      while (forgotten.isEmpty()) {
        TileDraft draft = new TileDraft(connection);
        new RoadMemory(draft)
            .forgetAround(place.latitudeDegrees(), place.longitudeDegrees(), place.radiusMetres());
        forgotten = connection.change("forget roads", handle -> kept(handle, place, draft));
      }
      return forgotten.get();
    } catch (UnreadableTile e) {
      throw e.fault;
    }
  }

  /** Empty if somebody has learned something there meanwhile; nothing is kept then. */
  private static Optional<Forgotten> kept(Handle handle, QuietPlace place, TileDraft draft) {
    if (!draft.keep(handle)) {
      return Optional.empty();
    }
    deleteDamaged(handle, place);
    RoadRows.keepQuiet(handle, place);
    QuietCircle circle = new QuietCircle(place);
    TileContents gone = draft.contentsBefore().minus(draft.contentsAfter());
    return Optional.of(
        new Forgotten(
            gone.pieces(),
            Math.max(0, gone.metres()),
            ClimbRows.forget(handle, climb -> circle.meets(climb.line()))));
  }

  /** Tiles there that nobody can read go as a whole. */
  private static void deleteDamaged(Handle handle, QuietPlace place) {
    RoadTiles tiles = new RoadTiles(handle);
    for (TileKey key :
        TilesAround.of(place.latitudeDegrees(), place.longitudeDegrees(), place.radiusMetres())) {
      int number = key.number();
      tiles
          .find(number)
          .filter(tile -> !RoadTiles.isWhole(number, tile))
          .ifPresent(_ -> tiles.delete(number));
    }
  }
}
