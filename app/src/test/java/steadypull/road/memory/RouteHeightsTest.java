package steadypull.road.memory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import steadypull.demo.road.Country;
import steadypull.demo.road.Road;
import steadypull.demo.road.Tour;
import steadypull.road.PositionFix;
import steadypull.road.Route;
import steadypull.road.RoutePoint;
import steadypull.road.RouteSegment;
import steadypull.road.TourRoutes;

/** Where a route tells the height of the road, and where it had better not. */
class RouteHeightsTest {
  private static final Tour HARROW = Country.larkmoor().overTheHarrow();

  @Test
  void onTheRouteItsElevationIsTold() {
    RouteHeights heights = of(TourRoutes.everyMetres(HARROW, 40));
    for (double metres = 500; metres < 20_000; metres += 370) {
      Road.Place place = HARROW.at(metres);
      assertThat(heights.at(fix(place, 0)).orElseThrow())
          .as("at %.0f m", metres)
          .isCloseTo(place.altitude(), within(1.5));
    }
  }

  @Test
  void besideTheRouteNothingIsTold() {
    RouteHeights heights = of(TourRoutes.everyMetres(HARROW, 40));
    assertThat(heights.at(fix(HARROW.at(3000), 15))).isPresent();
    assertThat(heights.at(fix(HARROW.at(3000), 120))).isEmpty();
  }

  @Test
  void whereElevationsAreMissingNothingIsTold() {
    RouteHeights heights =
        of(TourRoutes.along(HARROW, 40, 0, metres -> metres < 4000 || metres > 9000));
    assertThat(heights.at(fix(HARROW.at(3000), 0))).isPresent();
    assertThat(heights.at(fix(HARROW.at(6500), 0))).isEmpty();
  }

  /** Whoever is on a bridge over the route's own way is at one of two heights. */
  @Test
  void whereTheRouteCrossesItselfAboveNothingIsTold() {
    List<RoutePoint> points = new ArrayList<>();
    for (int i = -20; i <= 20; i++) {
      points.add(point(-41, -118 + i * 0.0004, 100));
    }
    for (int i = -20; i <= 20; i++) {
      points.add(point(-41 + i * 0.0003, -118, 112));
    }
    RouteHeights heights =
        of(new Route("", List.of(RouteSegment.of(points.toArray(RoutePoint[]::new)))));

    assertThat(heights.at(new PositionFix(1, -41, -118, OptionalDouble.empty()))).isEmpty();
    assertThat(heights.at(new PositionFix(1, -41, -117.996, OptionalDouble.empty()))).isPresent();
  }

  private static RouteHeights of(Route route) {
    return new RouteHeights(RoutePasses.of(route));
  }

  private static RoutePoint point(double latitude, double longitude, double elevation) {
    return new RoutePoint(latitude, longitude, OptionalDouble.of(elevation), Optional.empty());
  }

  private static PositionFix fix(Road.Place place, double metresAside) {
    return new PositionFix(
        1, place.latitude() + metresAside / 111_195, place.longitude(), OptionalDouble.empty());
  }
}
