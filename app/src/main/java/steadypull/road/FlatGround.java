package steadypull.road;

import net.sf.geographiclib.Constants;

/**
 * The ellipsoid of WGS 84 around a place, taken for flat: metres east and north. At 50 degrees of
 * latitude a place 1 km away is told 0.1 m beside, one 10 km away 10 m: the square of the distance
 * times tan(latitude) over the earth's diameter. Immutable.
 */
public final class FlatGround {
  private static final double SQUARED_ECCENTRICITY = Constants.WGS84_f * (2 - Constants.WGS84_f);

  private final double latitude;
  private final double longitude;
  private final double metresPerDegreeNorth;
  private final double metresPerDegreeEast;

  /**
   * A spot.
   *
   * @param east m from the origin
   * @param north m from the origin
   */
  public record Spot(double east, double north) {
    /** Metres to another. */
    public double distanceTo(Spot other) {
      return Math.hypot(other.east - east, other.north - north);
    }
  }

  /**
   * Scales by the ellipsoid's radii of curvature (Snyder, "Map Projections: A Working Manual", USGS
   * Professional Paper 1395, 1987, equations 4-18 to 4-21; from memory): memory of roads makes such
   * grounds by the million, and a geodesic takes a hundred times as long.
   */
  private FlatGround(double latitude, double longitude) {
    this.latitude = latitude;
    this.longitude = longitude;
    double sine = Math.sin(Math.toRadians(latitude));
    double flattened = 1 - SQUARED_ECCENTRICITY * sine * sine;
    double eastRadius = Constants.WGS84_a / Math.sqrt(flattened);
    double northRadius = eastRadius * (1 - SQUARED_ECCENTRICITY) / flattened;
    metresPerDegreeNorth = Math.toRadians(northRadius);
    metresPerDegreeEast =
        Math.max(1, Math.toRadians(eastRadius * Math.cos(Math.toRadians(latitude))));
  }

  /** The ground around a place, -89 to 89 degrees north. */
  public static FlatGround around(double latitudeDegrees, double longitudeDegrees) {
    return new FlatGround(latitudeDegrees, longitudeDegrees);
  }

  /** Where a place lies. */
  public Spot spot(double latitudeDegrees, double longitudeDegrees) {
    double east = Math.IEEEremainder(longitudeDegrees - longitude, 360);
    return new Spot(
        east * metresPerDegreeEast, (latitudeDegrees - latitude) * metresPerDegreeNorth);
  }

  /** Degrees north of a spot so many metres north. */
  public double latitude(double metresNorth) {
    return latitude + metresNorth / metresPerDegreeNorth;
  }

  /** Degrees east of a spot so many metres east, -180 to 180. */
  public double longitude(double metresEast) {
    return Math.IEEEremainder(longitude + metresEast / metresPerDegreeEast, 360);
  }
}
