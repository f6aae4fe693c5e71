package steadypull.road.climb;

import java.util.Objects;

/**
 * A climb that was driven before. Immutable.
 *
 * @param id the same for every pass of the climb by any vehicle; lower-case letters and digits
 * @param name as people call it; empty if they gave it none
 * @param line from its start to its end
 * @param lengthMetres as it was driven first, above 0
 * @param riseMetres as it was driven first, above 0
 */
public record KnownClimb(
    String id, String name, ClimbLine line, double lengthMetres, double riseMetres) {
  public KnownClimb {
    Objects.requireNonNull(name);
    Objects.requireNonNull(line);
    if (id.isBlank() || !(lengthMetres > 0 && riseMetres > 0)) {
      throw new IllegalArgumentException(
          "A known climb has an id, length and rise above 0, found \"%s\", %s m, %s m"
              .formatted(id, lengthMetres, riseMetres));
    }
  }

  /** The same climb with the name that people give it; empty takes it back. */
  public KnownClimb named(String other) {
    return new KnownClimb(id, other, line, lengthMetres, riseMetres);
  }
}
