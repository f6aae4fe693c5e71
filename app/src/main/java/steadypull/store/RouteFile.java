package steadypull.store;

import java.util.Objects;

/**
 * A route as the library keeps it.
 *
 * @param name as people call it; may be empty
 * @param gpx the route as GPX 1.1; the library does not look into it
 */
public record RouteFile(String name, String gpx) {
  public RouteFile {
    Objects.requireNonNull(name);
    Objects.requireNonNull(gpx);
  }
}
