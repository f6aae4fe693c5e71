package steadypull.exchange;

import java.io.InputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.road.Route;
import steadypull.road.RoutePoint;
import steadypull.road.RouteSegment;
import steadypull.road.RouteSegmentBuilder;

/**
 * Reads the routes and tracks of one GPX file, 1.1 or 1.0, in one go. Judges what a route needs and
 * passes over everything else, whatever its order. One thread.
 */
final class GpxReader {
  /** Three weeks of driving with a point a second; more would crowd a tablet's memory. */
  private static final int MOST_POINTS = 2_000_000;

  private final GpxCursor at;
  private final int mostPoints;
  private final List<Route> routes = new ArrayList<>();
  private long waypoints;
  private long shorts;
  private int points;

  GpxReader(Path file, InputStream content) throws TableException {
    this(file, content, MOST_POINTS);
  }

  GpxReader(Path file, InputStream content, int mostPoints) throws TableException {
    this.at = new GpxCursor(file, content);
    this.mostPoints = mostPoints;
  }

  ImportedRoutes read() throws TableException {
    at.toRoot();
    CellPlace root = at.place();
    requireGpx(root);
    while (at.toChild()) {
      switch (at.element()) {
        case "rte" -> keep(route());
        case "trk" -> keep(track());
        case "wpt" -> passWaypoint();
        default -> at.skip();
      }
    }
    at.toEnd();
    if (routes.isEmpty()) {
      throw root.refusal(
          "a route or track with two points or more",
          "%d waypoints and %d routes or tracks with fewer points".formatted(waypoints, shorts));
    }
    return new ImportedRoutes(routes, waypoints, shorts);
  }

  private void requireGpx(CellPlace root) throws TableException {
    if (!at.element().equals("gpx")) {
      throw root.refusal(
          "gpx of the namespace " + GpxNames.NAMESPACE,
          CellPlace.quoted(at.fullName()),
          " Is it a GPX file?");
    }
  }

  private void passWaypoint() throws TableException {
    waypoints++;
    at.skip();
  }

  private void keep(Way way) {
    if (way.segments.stream().mapToInt(RouteSegment::size).sum() < 2) {
      shorts++;
    } else {
      routes.add(new Route(way.name, way.segments));
    }
  }

  private Way route() throws TableException {
    Way way = new Way();
    RouteSegmentBuilder segment = new RouteSegmentBuilder();
    while (at.toChild()) {
      switch (at.element()) {
        case "name" -> way.name = at.text();
        case "rtept" -> segment.add(point());
        default -> at.skip();
      }
    }
    way.add(segment);
    return way;
  }

  private Way track() throws TableException {
    Way way = new Way();
    while (at.toChild()) {
      switch (at.element()) {
        case "name" -> way.name = at.text();
        case "trkseg" -> way.add(segment());
        default -> at.skip();
      }
    }
    return way;
  }

  private RouteSegmentBuilder segment() throws TableException {
    RouteSegmentBuilder segment = new RouteSegmentBuilder();
    while (at.toChild()) {
      if (at.element().equals("trkpt")) {
        segment.add(point());
      } else {
        at.skip();
      }
    }
    return segment;
  }

  private RoutePoint point() throws TableException {
    CellPlace place = at.place();
    points++;
    if (points > mostPoints) {
      throw place.refusal("at most " + mostPoints + " points", "more", " Part the file.");
    }
    double latitude = GpxValue.latitude(at.attribute("lat"), place);
    double longitude = GpxValue.longitude(at.attribute("lon"), place);
    OptionalDouble elevation = OptionalDouble.empty();
    Optional<Instant> time = Optional.empty();
    while (at.toChild()) {
      CellPlace inside = at.place();
      switch (at.element()) {
        case "ele" -> elevation = GpxValue.elevation(at.text(), inside);
        case "time" -> time = GpxValue.time(at.text(), inside);
        default -> at.skip();
      }
    }
    return new RoutePoint(latitude, longitude, elevation, time);
  }

  /** A route or track as far as it has been read. */
  private static final class Way {
    private final List<RouteSegment> segments = new ArrayList<>();
    private String name = "";

    private void add(RouteSegmentBuilder segment) {
      if (segment.size() > 0) {
        segments.add(segment.build());
      }
    }
  }
}
