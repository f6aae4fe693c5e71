package steadypull.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.jdbi.v3.core.Handle;
import steadypull.road.climb.Climb;
import steadypull.road.climb.ClimbCollection;
import steadypull.road.climb.ClimbIdentity;
import steadypull.road.climb.ClimbLineBytes;
import steadypull.road.climb.ClimbRecognition;
import steadypull.road.climb.KnownClimb;

/** The climbs that a library knows as rows. Inside somebody else's transaction. */
final class ClimbRows {
  private ClimbRows() {}

  /** Keeps a climb in place of the one of the same id. */
  static void save(Handle handle, KnownClimb climb) {
    handle
        .createUpdate(Sql.of("saveClimb"))
        .bind("id", climb.id())
        .bind("name", climb.name())
        .bind("line", ClimbLineBytes.encode(climb.line()))
        .bind("lengthMetres", climb.lengthMetres())
        .bind("riseMetres", climb.riseMetres())
        .execute();
  }

  /** Keeps those climbs of a trip that nobody has driven before. */
  static void saveNew(Handle handle, List<Climb> found) {
    ClimbCollection known = new ClimbCollection(all(handle));
    ClimbRecognition recognition = new ClimbRecognition(known);
    for (Climb climb : found) {
      if (recognition.identify(climb) instanceof ClimbIdentity.New(KnownClimb discovered)) {
        known.add(discovered);
        save(handle, discovered);
      }
    }
  }

  /** First kept first; one whose row is damaged is left out. */
  static List<KnownClimb> all(Handle handle) {
    return handle.createQuery(Sql.of("selectClimbs")).map((row, _) -> climb(row)).list().stream()
        .flatMap(Optional::stream)
        .toList();
  }

  private static Optional<KnownClimb> climb(ResultSet row) throws SQLException {
    try {
      return Optional.of(
          new KnownClimb(
              row.getString("id"),
              row.getString("name"),
              ClimbLineBytes.decode(row.getBytes("line")),
              row.getDouble("length_metres"),
              row.getDouble("rise_metres")));
    } catch (IllegalArgumentException e) {
      // It is recognised anew when somebody drives it; check tells of the damage.
      return Optional.empty();
    }
  }

  /** Forgets those that a condition holds for; says how many. */
  static int forget(Handle handle, Predicate<KnownClimb> isMeant) {
    List<KnownClimb> meant = all(handle).stream().filter(isMeant).toList();
    meant.forEach(
        climb -> handle.createUpdate(Sql.of("deleteClimb")).bind("id", climb.id()).execute());
    return meant.size();
  }

  static void deleteAll(Handle handle) {
    handle.createUpdate(Sql.of("deleteClimbs")).execute();
  }
}
