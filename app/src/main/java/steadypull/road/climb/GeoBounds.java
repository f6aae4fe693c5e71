package steadypull.road.climb;

/**
 * A field between circles of latitude and meridians, WGS 84. Immutable. Lines that cross the
 * meridian of 180 degrees have bounds around the whole Earth: too wide, never too narrow.
 *
 * @param southDegrees -90 to 90
 * @param westDegrees -180 to 180
 * @param northDegrees not below the south
 * @param eastDegrees not below the west
 */
public record GeoBounds(
    double southDegrees, double westDegrees, double northDegrees, double eastDegrees) {
  public GeoBounds {
    if (!(southDegrees <= northDegrees && westDegrees <= eastDegrees)) {
      throw new IllegalArgumentException(
          "Bounds have their south below their north and their west below their east, found %s to"
                  .formatted(southDegrees)
              + " %s, %s to %s".formatted(northDegrees, westDegrees, eastDegrees));
    }
  }

  /** Whether some place lies within both. */
  public boolean meets(GeoBounds other) {
    return southDegrees <= other.northDegrees
        && other.southDegrees <= northDegrees
        && westDegrees <= other.eastDegrees
        && other.westDegrees <= eastDegrees;
  }
}
