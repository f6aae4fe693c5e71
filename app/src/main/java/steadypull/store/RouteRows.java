package steadypull.store;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** The routes of a library as rows. Inside somebody else's transaction. */
final class RouteRows {
  private static final String PREFIX = "route-";

  /** 48 bits: a million different routes collide with a probability of 0.002. */
  private static final int ID_BYTES = 6;

  private RouteRows() {}

  /** Keeps a route unless it is there already; its id comes from its content. */
  static String keep(Handle handle, RouteFile route) {
    String id = id(route.gpx());
    handle
        .createUpdate(Sql.of("insertRoute"))
        .bind("id", id)
        .bind("name", route.name())
        .bind("routeFile", route.gpx())
        .execute();
    return id;
  }

  static List<KeptRoute> all(Handle handle) {
    return handle
        .createQuery(Sql.of("selectRoutes"))
        .map((row, _) -> new KeptRoute(row.getString("id"), row.getString("name")))
        .list();
  }

  static Optional<RouteFile> find(Handle handle, String id) {
    return handle
        .createQuery(Sql.of("selectRoute"))
        .bind("id", id)
        .map((row, _) -> new RouteFile(row.getString("name"), row.getString("route_file")))
        .findOne();
  }

  private static String id(String gpx) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(gpx.getBytes(StandardCharsets.UTF_8));
      return PREFIX + HexFormat.of().formatHex(hash, 0, ID_BYTES);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Java comes without SHA-256", e);
    }
  }
}
