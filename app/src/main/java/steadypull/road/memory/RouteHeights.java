package steadypull.road.memory;

import java.util.List;
import java.util.OptionalDouble;
import steadypull.road.FlatGround;
import steadypull.road.PassPoint;
import steadypull.road.PositionFix;
import steadypull.road.RoadPass;

/**
 * The heights along a route where its elevations tell them, by place. Where it passes a place twice
 * at two heights, or in the bends of a serpentine, nothing is told. Immutable.
 */
final class RouteHeights {
  /** Farther from the route nobody is on it, m. */
  private static final double NEAR_METRES = 40;

  /** Points so near are one place if their heights are within what a steep road rises, m. */
  private static final double ONE_PLACE_METRES = 6;

  private static final double LATITUDE_DEGREES = NEAR_METRES / 110_000;

  private final List<PassPoint> told;

  RouteHeights(List<RoadPass> passes) {
    told =
        passes.stream()
            .flatMap(pass -> pass.points().stream())
            .filter(point -> point.gradeError() < SightCosts.UNTOLD_GRADE_ERROR)
            .filter(point -> point.place().isPresent())
            .toList();
  }

  /** The height at a fix, or empty if it is not told or not for certain. */
  OptionalDouble at(PositionFix fix) {
    FlatGround ground = FlatGround.around(fix.latitudeDegrees(), fix.longitudeDegrees());
    double nearest = NEAR_METRES;
    double height = 0;
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (PassPoint point : told) {
      double distance = distance(ground, fix, point.place().orElseThrow());
      if (distance < NEAR_METRES) {
        lowest = Math.min(lowest, point.heightMetres());
        highest = Math.max(highest, point.heightMetres());
      }
      if (distance < nearest) {
        nearest = distance;
        height = point.heightMetres();
      }
    }
    return highest - lowest <= ONE_PLACE_METRES && nearest < NEAR_METRES
        ? OptionalDouble.of(height)
        : OptionalDouble.empty();
  }

  private static double distance(FlatGround ground, PositionFix fix, PassPoint.Place place) {
    if (Math.abs(place.latitudeDegrees() - fix.latitudeDegrees()) > LATITUDE_DEGREES) {
      return Double.POSITIVE_INFINITY;
    }
    FlatGround.Spot spot = ground.spot(place.latitudeDegrees(), place.longitudeDegrees());
    return Math.hypot(spot.east(), spot.north());
  }
}
