package steadypull.road.memory;

/**
 * What a node knows after one more pass: the mean of what was told, each weighed by its variance
 * (minimum-variance combination, Gauss). The errors of one pass go together along the road but not
 * with those of another pass, so a node counts each pass once. Pure functions.
 */
final class Fusion {
  /**
   * No number of passes makes a grade surer: what they all share, such as the straight lines
   * between nodes and a vehicle that comes again with the same wrong mass (estimated).
   */
  private static final double LEAST_GRADE_ERROR = 0.001;

  private static final double LEAST_PLACE_ERROR_METRES = 1;

  private Fusion() {}

  static RoadNode begin(long id, PassCurve.Spot spot, boolean isOwnWay) {
    return new RoadNode(
        id,
        spot.latitudeDegrees(),
        spot.longitudeDegrees(),
        Math.max(LEAST_PLACE_ERROR_METRES, spot.errorMetres()),
        spot.grade(),
        Math.max(LEAST_GRADE_ERROR, spot.gradeError()),
        isOwnWay ? 1 : 0);
  }

  static RoadNode of(RoadNode node, PassCurve.Spot spot, boolean isOwnWay) {
    double place = share(node.placeErrorMetres(), spot.errorMetres());
    double grade = share(node.gradeError(), spot.gradeError());
    double east = Math.IEEEremainder(spot.longitudeDegrees() - node.longitudeDegrees(), 360);
    return new RoadNode(
        node.id(),
        node.latitudeDegrees() + place * (spot.latitudeDegrees() - node.latitudeDegrees()),
        node.longitudeDegrees() + place * east,
        Math.max(LEAST_PLACE_ERROR_METRES, node.placeErrorMetres() * Math.sqrt(1 - place)),
        node.grade() + grade * (spot.grade() - node.grade()),
        Math.max(LEAST_GRADE_ERROR, node.gradeError() * Math.sqrt(1 - grade)),
        node.passes() + (isOwnWay ? 1 : 0));
  }

  /**
   * What a node knows after a pass that contradicts: not their mean. Each pass for it stands
   * against one (the vote of Boyer and Moore, "MJRTY", 1991); where none is left, the new one is
   * believed, but no more than the difference allows.
   */
  static RoadNode against(RoadNode node, PassCurve.Spot spot, boolean isOwnWay) {
    int passes = node.passes() - (isOwnWay ? 1 : 0);
    if (passes > 0) {
      return new RoadNode(
          node.id(),
          node.latitudeDegrees(),
          node.longitudeDegrees(),
          node.placeErrorMetres(),
          node.grade(),
          node.gradeError(),
          passes);
    }
    return new RoadNode(
        node.id(),
        node.latitudeDegrees(),
        node.longitudeDegrees(),
        node.placeErrorMetres(),
        spot.grade(),
        Math.hypot(spot.gradeError(), (spot.grade() - node.grade()) / 2),
        isOwnWay ? 1 : 0);
  }

  /** How much of the mean is the new one's. */
  private static double share(double error, double newError) {
    double variance = error * error;
    return variance / (variance + newError * newError);
  }
}
