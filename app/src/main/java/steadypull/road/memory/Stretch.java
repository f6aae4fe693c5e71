package steadypull.road.memory;

import steadypull.road.FlatGround;

/**
 * The straight way from a node to the next, seen on flat ground. Immutable.
 *
 * @param from where it begins
 * @param to where it ends
 * @param begin spot of the first
 * @param end spot of the second
 */
record Stretch(RoadNode from, RoadNode to, FlatGround.Spot begin, FlatGround.Spot end) {
  static Stretch of(RoadNode from, RoadNode to, FlatGround ground) {
    return new Stretch(
        from,
        to,
        ground.spot(from.latitudeDegrees(), from.longitudeDegrees()),
        ground.spot(to.latitudeDegrees(), to.longitudeDegrees()));
  }

  /** At least 1 m, so that whoever follows stretches gets on. */
  double metres() {
    return Math.max(1, begin.distanceTo(end));
  }

  /** Radians counter-clockwise from east. */
  double heading() {
    return Math.atan2(end.north() - begin.north(), end.east() - begin.east());
  }

  /** The share of the stretch, 0 to 1, at which it is nearest to a spot. */
  double shareNear(FlatGround.Spot spot) {
    double east = end.east() - begin.east();
    double north = end.north() - begin.north();
    double along = (spot.east() - begin.east()) * east + (spot.north() - begin.north()) * north;
    double square = east * east + north * north;
    return square == 0 ? 0 : Math.clamp(along / square, 0, 1);
  }

  FlatGround.Spot at(double share) {
    return new FlatGround.Spot(
        begin.east() + share * (end.east() - begin.east()),
        begin.north() + share * (end.north() - begin.north()));
  }

  double placeErrorMetres(double share) {
    return (1 - share) * from.placeErrorMetres() + share * to.placeErrorMetres();
  }

  double grade(double share) {
    return (1 - share) * from.grade() + share * to.grade();
  }

  double gradeError(double share) {
    return (1 - share) * from.gradeError() + share * to.gradeError();
  }
}
