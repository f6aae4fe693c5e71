package steadypull.road;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoublePredicate;
import steadypull.demo.road.Road;
import steadypull.demo.road.Tour;

/** Tours through the invented country as routes that somebody planned. */
public final class TourRoutes {
  private static final long SEED = 11;

  private TourRoutes() {}

  /** A route along a tour with points up to so far apart and elevations in whole metres. */
  public static Route along(
      Tour tour, double mostApart, double elevationError, DoublePredicate hasElevation) {
    Random random = new Random(SEED);
    List<RoutePoint> points = new ArrayList<>();
    for (double metres = 0;
        metres < tour.length();
        metres += mostApart * (0.1 + 0.9 * random.nextDouble())) {
      double elevation =
          Math.rint(tour.at(metres).altitude() + elevationError * random.nextGaussian());
      points.add(
          point(
              tour.at(metres),
              hasElevation.test(metres) ? OptionalDouble.of(elevation) : OptionalDouble.empty()));
    }
    return route(points);
  }

  /**
   * A route with points every 40 m whose elevations err as those of maps do: by 2.5 m, alike over
   * 300 m, and all along by its datum.
   */
  public static Route wandering(Tour tour, long seed) {
    Random random = new Random(seed);
    double datum = 20 * random.nextGaussian();
    double kept = Math.exp(-40 / 300.0);
    double error = 2.5 * random.nextGaussian();
    List<RoutePoint> points = new ArrayList<>();
    for (double metres = 0; metres < tour.length(); metres += 40) {
      double elevation = tour.at(metres).altitude() + datum + error;
      points.add(point(tour.at(metres), OptionalDouble.of(Math.rint(elevation * 10) / 10)));
      error = kept * error + 2.5 * Math.sqrt(1 - kept * kept) * random.nextGaussian();
    }
    return route(points);
  }

  /** One that tells only where it leads. */
  public static Route withoutElevations(Tour tour) {
    return along(tour, 40, 0, _ -> false);
  }

  /** One with elevations and points at equal distances. */
  public static Route everyMetres(Tour tour, double apart) {
    List<RoutePoint> points = new ArrayList<>();
    for (double metres = 0; metres < tour.length(); metres += apart) {
      points.add(point(tour.at(metres), OptionalDouble.of(tour.at(metres).altitude())));
    }
    return route(points);
  }

  private static RoutePoint point(Road.Place place, OptionalDouble elevation) {
    return new RoutePoint(place.latitude(), place.longitude(), elevation, Optional.empty());
  }

  private static Route route(List<RoutePoint> points) {
    return new Route("", List.of(RouteSegment.of(points.toArray(RoutePoint[]::new))));
  }
}
