package steadypull.road.climb;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;
import steadypull.road.FlatGround;

/**
 * The line of a climb on the map, from its start to its end. Immutable.
 *
 * @param vertices in the direction of travel, two or more, to the millionth of a degree (0.1 m)
 */
public record ClimbLine(List<Vertex> vertices) {
  private static final GeometryFactory GEOMETRY = new GeometryFactory();

  /** A line that is nowhere farther away is the same to a receiver that errs by metres. */
  private static final double SIMPLER_WITHIN_METRES = 2;

  private static final double MILLION = 1e6;
  private static final double FULL_TURN = 360;

  /**
   * A vertex. WGS 84.
   *
   * @param latitudeDegrees -90 to 90
   * @param longitudeDegrees -180 to 180
   */
  public record Vertex(double latitudeDegrees, double longitudeDegrees) {
    public Vertex {
      if (!(Math.abs(latitudeDegrees) <= 90 && Math.abs(longitudeDegrees) <= FULL_TURN / 2)) {
        throw new IllegalArgumentException(
            "A vertex lies between -90 and 90 degrees north and -180 and 180 degrees east, found"
                + " %s, %s".formatted(latitudeDegrees, longitudeDegrees));
      }
    }

    static Vertex rounded(double latitudeDegrees, double longitudeDegrees) {
      return new Vertex(
          Math.round(latitudeDegrees * MILLION) / MILLION,
          Math.round(longitudeDegrees * MILLION) / MILLION);
    }
  }

  public ClimbLine {
    vertices = List.copyOf(vertices);
    if (vertices.size() < 2) {
      throw new IllegalArgumentException(
          "A line has two vertices or more, found " + vertices.size());
    }
  }

  /** The simplest line through the spots of a climb, two or more. */
  static ClimbLine through(List<Climb.Spot> spots) {
    FlatGround ground =
        FlatGround.around(spots.getFirst().latitudeDegrees(), spots.getFirst().longitudeDegrees());
    Coordinate[] drawn =
        spots.stream()
            .map(spot -> coordinate(ground, spot.latitudeDegrees(), spot.longitudeDegrees()))
            .toArray(Coordinate[]::new);
    List<Vertex> vertices = new ArrayList<>();
    for (Coordinate each :
        DouglasPeuckerSimplifier.simplify(GEOMETRY.createLineString(drawn), SIMPLER_WITHIN_METRES)
            .getCoordinates()) {
      vertices.add(Vertex.rounded(ground.latitude(each.getY()), ground.longitude(each.getX())));
    }
    return new ClimbLine(vertices);
  }

  /** The least field that holds the line. */
  public GeoBounds bounds() {
    double west = longitudes().min().orElseThrow();
    double east = longitudes().max().orElseThrow();
    boolean isAcross = east - west > FULL_TURN / 2;
    return new GeoBounds(
        latitudes().min().orElseThrow(),
        isAcross ? -FULL_TURN / 2 : west,
        latitudes().max().orElseThrow(),
        isAcross ? FULL_TURN / 2 : east);
  }

  /** The ground around the line's start. */
  FlatGround ground() {
    Vertex first = vertices.getFirst();
    return FlatGround.around(first.latitudeDegrees(), first.longitudeDegrees());
  }

  /** The line on the ground around its start, metres east and north. */
  LineString onGround() {
    FlatGround ground = ground();
    return GEOMETRY.createLineString(
        vertices.stream()
            .map(each -> coordinate(ground, each.latitudeDegrees(), each.longitudeDegrees()))
            .toArray(Coordinate[]::new));
  }

  static Coordinate coordinate(FlatGround ground, double latitude, double longitude) {
    FlatGround.Spot spot = ground.spot(latitude, longitude);
    return new Coordinate(spot.east(), spot.north());
  }

  private DoubleStream latitudes() {
    return vertices.stream().mapToDouble(Vertex::latitudeDegrees);
  }

  private DoubleStream longitudes() {
    return vertices.stream().mapToDouble(Vertex::longitudeDegrees);
  }
}
