package steadypull.store;

/**
 * A circle in which the memory of roads keeps nothing. WGS 84. Immutable.
 *
 * @param latitudeDegrees -90 to 90
 * @param longitudeDegrees -180 to 180
 * @param radiusMetres {@link #LEAST_METRES} to {@link #MOST_METRES}
 */
public record QuietPlace(double latitudeDegrees, double longitudeDegrees, double radiusMetres) {
  public static final double LEAST_METRES = 1;
  public static final double MOST_METRES = 50_000;

  public QuietPlace {
    require("latitude of -90 to 90 degrees", Math.abs(latitudeDegrees) <= 90, latitudeDegrees);
    require(
        "longitude of -180 to 180 degrees", Math.abs(longitudeDegrees) <= 180, longitudeDegrees);
    require(
        "radius of 1 to 50000 m",
        radiusMetres >= LEAST_METRES && radiusMetres <= MOST_METRES,
        radiusMetres);
  }

  private static void require(String expected, boolean holds, double found) {
    if (!holds) {
      throw new IllegalArgumentException("A quiet place has a " + expected + ", found " + found);
    }
  }
}
