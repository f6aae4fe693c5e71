package steadypull.road.climb;

import java.util.List;

/**
 * A stretch of a drive on which the road rose. Immutable.
 *
 * @param startSeconds since the trip began
 * @param endSeconds since the trip began, later than the start
 * @param startMetres driven since the trip began, gaps not counted
 * @param lengthMetres from start to end, bridged gaps included; above 0
 * @param riseMetres the end above the start, above 0
 * @param steepestGrade over 200 m within the climb, or over all of it if it is shorter; a fraction
 * @param begun what came before
 * @param ended what came after
 * @param gapSeconds within the climb that nothing was told in, 0 or more
 * @param spots where it was driven, in the order of travel; where no place was told, none
 */
public record Climb(
    double startSeconds,
    double endSeconds,
    double startMetres,
    double lengthMetres,
    double riseMetres,
    double steepestGrade,
    End begun,
    End ended,
    double gapSeconds,
    List<Spot> spots) {

  /** What bounds a climb. A closed set. */
  public enum End {
    /** The road grew steeper or less steep there. */
    ROAD,
    /** The record of the drive begins or ends there. */
    RECORD,
    /** The vehicle turned around there. */
    TURN
  }

  /**
   * A place on a climb. WGS 84.
   *
   * @param metres from the climb's start
   * @param rise above the climb's start, m
   * @param latitudeDegrees -90 to 90
   * @param longitudeDegrees -180 to 180
   */
  public record Spot(double metres, double rise, double latitudeDegrees, double longitudeDegrees) {}

  public Climb {
    spots = List.copyOf(spots);
    if (!(endSeconds > startSeconds && lengthMetres > 0 && riseMetres > 0)) {
      throw new IllegalArgumentException(
          "A climb takes time and has length and rise above 0, found %s s, %s m, %s m"
              .formatted(endSeconds - startSeconds, lengthMetres, riseMetres));
    }
  }

  /** Rise over length, a fraction. */
  public double meanGrade() {
    return riseMetres / lengthMetres;
  }

  /** From start to end, stops included, s. */
  public double seconds() {
    return endSeconds - startSeconds;
  }

  /** Length over time, km/h. */
  public double meanKilometresPerHour() {
    return lengthMetres / seconds() * 3.6;
  }

  /** Whether both ends are the road's own: another drive could find the same. */
  public boolean isWhole() {
    return begun == End.ROAD && ended == End.ROAD;
  }
}
