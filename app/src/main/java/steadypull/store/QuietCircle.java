package steadypull.store;

import java.util.List;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
import steadypull.road.FlatGround;
import steadypull.road.climb.ClimbLine;

/** What lies within a quiet place. Immutable. */
final class QuietCircle {
  private static final Coordinate MIDDLE = new Coordinate(0, 0);

  private final FlatGround ground;
  private final double radiusMetres;

  QuietCircle(QuietPlace place) {
    ground = FlatGround.around(place.latitudeDegrees(), place.longitudeDegrees());
    radiusMetres = place.radiusMetres();
  }

  /** Whether a place lies within. */
  boolean holds(double latitudeDegrees, double longitudeDegrees) {
    return coordinate(latitudeDegrees, longitudeDegrees).distance(MIDDLE) <= radiusMetres;
  }

  /** Whether a line leads through, or touches. */
  boolean meets(ClimbLine line) {
    List<Coordinate> corners =
        line.vertices().stream()
            .map(vertex -> coordinate(vertex.latitudeDegrees(), vertex.longitudeDegrees()))
            .toList();
    for (int corner = 1; corner < corners.size(); corner++) {
      if (Distance.pointToSegment(MIDDLE, corners.get(corner - 1), corners.get(corner))
          <= radiusMetres) {
        return true;
      }
    }
    return false;
  }

  private Coordinate coordinate(double latitudeDegrees, double longitudeDegrees) {
    FlatGround.Spot spot = ground.spot(latitudeDegrees, longitudeDegrees);
    return new Coordinate(spot.east(), spot.north());
  }
}
