package steadypull.store;

import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** From which trips roads were learned, and where nothing is. Inside somebody's transaction. */
final class RoadRows {
  private RoadRows() {}

  /** A trip from which nothing was learned yet. */
  record Waiting(String tripId, String origin) {}

  /** How many trips have ended and wait for their roads to be learned. */
  static int waitingCount(Handle handle) {
    return handle.createQuery(Sql.of("countTripsToLearn")).mapTo(Integer.class).one();
  }

  /** The oldest of them. */
  static Optional<Waiting> firstWaiting(Handle handle, UnlearntTrips leftOut) {
    return handle
        .createQuery(Sql.of("selectTripToLearn"))
        .map((row, _) -> new Waiting(row.getString("id"), row.getString("origin")))
        .list()
        .stream()
        .filter(waiting -> !leftOut.has(waiting.origin()))
        .findFirst();
  }

  /** Whether a trip still waits. */
  static boolean isWaiting(Handle handle, String origin) {
    return handle
            .createQuery(Sql.of("countRoadLearned"))
            .bind("origin", origin)
            .mapTo(Integer.class)
            .one()
        == 0;
  }

  /** Notes that a trip was learned; false if that was noted already. */
  static boolean learned(Handle handle, String origin, long passes) {
    return handle
            .createUpdate(Sql.of("insertRoadLearned"))
            .bind("origin", origin)
            .bind("passes", passes)
            .execute()
        > 0;
  }

  /** Notes that there is nothing to learn from any trip that has ended. */
  static void allLearned(Handle handle) {
    handle.createUpdate(Sql.of("insertAllRoadLearned")).execute();
  }

  /** Keeps a place quiet, once. */
  static void keepQuiet(Handle handle, QuietPlace place) {
    handle
        .createUpdate(Sql.of("insertRoadQuiet"))
        .bind("latitudeDegrees", place.latitudeDegrees())
        .bind("longitudeDegrees", place.longitudeDegrees())
        .bind("radiusMetres", place.radiusMetres())
        .execute();
  }

  /** In the order in which they were kept. */
  static List<QuietPlace> quietPlaces(Handle handle) {
    return handle
        .createQuery(Sql.of("selectRoadQuiet"))
        .map(
            (row, _) ->
                new QuietPlace(
                    row.getDouble("latitude_degrees"),
                    row.getDouble("longitude_degrees"),
                    row.getDouble("radius_metres")))
        .list();
  }

  /**
   * Remembers roads at a place again.
   *
   * @param number of the place in {@link #quietPlaces}, from 1
   * @return false if there is none of that number
   */
  static boolean liftQuiet(Handle handle, int number) {
    Optional<Long> key =
        handle
            .createQuery(Sql.of("selectRoadQuietKey"))
            .bind("before", number - 1)
            .mapTo(Long.class)
            .findOne();
    key.ifPresent(
        each -> handle.createUpdate(Sql.of("deleteRoadQuiet")).bind("quietKey", each).execute());
    return key.isPresent();
  }
}
