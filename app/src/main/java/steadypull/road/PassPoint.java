package steadypull.road;

import java.util.Optional;

/**
 * What a pass over a road knows of one of its points, once the whole trip has been looked at.
 * Immutable.
 *
 * @param seconds since the trip began
 * @param metres driven since the trip began
 * @param place where it is; empty where no receiver told it, nor the road between two fixes
 * @param heightMetres of the road, above mean sea level if the receiver told any altitude in the
 *     trip, else above the trip's first point
 * @param grade rise over run in the direction of travel, a fraction
 * @param gradeError standard deviation of the grade, a fraction, above 0
 */
public record PassPoint(
    double seconds,
    double metres,
    Optional<Place> place,
    double heightMetres,
    double grade,
    double gradeError) {

  /**
   * Where a point is. WGS 84.
   *
   * @param latitudeDegrees -90 to 90
   * @param longitudeDegrees -180 to 180
   * @param errorMetres standard deviation across the road, above 0
   */
  public record Place(double latitudeDegrees, double longitudeDegrees, double errorMetres) {}

  public PassPoint {
    if (!(gradeError > 0)) {
      throw new IllegalArgumentException(
          "A grade is never told without error, found " + gradeError);
    }
  }
}
