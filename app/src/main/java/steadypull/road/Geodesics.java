package steadypull.road;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;

/**
 * Distances on the ellipsoid of WGS 84 (Karney, "Algorithms for geodesics", Journal of Geodesy 87,
 * 2013, 43-55), as GeographicLib computes them. Pure functions, any thread.
 */
final class Geodesics {
  private Geodesics() {}

  /** Shortest way between two places, metres. */
  static double metres(
      double fromLatitudeDegrees,
      double fromLongitudeDegrees,
      double toLatitudeDegrees,
      double toLongitudeDegrees) {
    return Geodesic.WGS84.Inverse(
            fromLatitudeDegrees,
            fromLongitudeDegrees,
            toLatitudeDegrees,
            toLongitudeDegrees,
            GeodesicMask.DISTANCE)
        .s12;
  }

  /**
   * Metres along a line to each of its points.
   *
   * @param latitudesDegrees of the points, in order, one or more
   * @param longitudesDegrees of the same points
   * @return as many, beginning with 0
   */
  static double[] distancesMetres(double[] latitudesDegrees, double[] longitudesDegrees) {
    double[] along = new double[latitudesDegrees.length];
    for (int point = 1; point < along.length; point++) {
      along[point] =
          along[point - 1]
              + metres(
                  latitudesDegrees[point - 1],
                  longitudesDegrees[point - 1],
                  latitudesDegrees[point],
                  longitudesDegrees[point]);
    }
    return along;
  }
}
