package steadypull.road.memory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoublePredicate;
import org.junit.jupiter.api.Test;
import steadypull.demo.road.Country;
import steadypull.demo.road.Road;
import steadypull.demo.road.Tour;
import steadypull.road.RoadAhead;
import steadypull.road.Route;
import steadypull.road.RoutePoint;
import steadypull.road.RouteSegment;

/** An imported route, and a trip's own past, as a sight of the road ahead. */
class RouteSightTest {
  private static final Country LARKMOOR = Country.larkmoor();
  private static final TourPass HARROW = TourPass.of(LARKMOOR.overTheHarrow(), 7);

  @Test
  void aRouteWithElevationsTellsTheRoadAhead() {
    LookAheadFigures figures = follow(HARROW, route(LARKMOOR.overTheHarrow(), 40, 1, _ -> true));

    assertThat(figures.recognisedMetres().orElseThrow()).isLessThan(500);
    assertThat(figures.knownShare()).isGreaterThan(0.95);
    // elevations in whole metres that err by 1 m: 0.7 % over 300 m is told, see the next
    assertThat(figures.rmsPercent(1000)).isLessThan(0.8);
  }

  /** Equation of the slope's error: that of two heights over their distance. */
  @Test
  void theErrorThatIsToldCoversTheErrorThatIsMade() {
    Tour tour = LARKMOOR.overTheHarrow();
    RouteSight sight = RouteSight.of(route(tour, 40, 2, _ -> true));
    List<Double> shares = new ArrayList<>();
    HARROW.live(
        sight,
        second -> {
          double here = HARROW.metres(second);
          if (sight.ahead() instanceof RoadAhead.Known known && known.certain().size() > 20) {
            double error = known.certain().grade(10) - HARROW.meanGrade(here + 500, here + 550);
            shares.add(Math.abs(error) / known.certain().error(10));
          }
        });
    double within = shares.stream().filter(share -> share < 2).count() / (double) shares.size();

    assertThat(shares).hasSizeGreaterThan(500);
    assertThat(within).isBetween(0.9, 1.0);
  }

  @Test
  void whereElevationsAreMissingTheRoadIsUnknown() {
    Route route =
        route(LARKMOOR.overTheHarrow(), 40, 0.5, metres -> metres < 6000 || metres > 9000);
    LookAheadFigures figures = follow(HARROW, route);

    assertThat(figures.claims())
        .isNotEmpty()
        .noneMatch(claim -> claim.tourMetres() < 9000 && ends(claim) > 6100)
        .anyMatch(claim -> claim.tourMetres() > 9500)
        .anyMatch(claim -> ends(claim) > 5500 && ends(claim) < 6100);
  }

  @Test
  void aRouteWithoutElevationsTellsNothing() {
    assertThat(follow(HARROW, route(LARKMOOR.overTheHarrow(), 40, 1, _ -> false)).knownShare())
        .isZero();
  }

  @Test
  void pointsAtRandomDistancesServeTheSame() {
    LookAheadFigures figures = follow(HARROW, route(LARKMOOR.overTheHarrow(), 200, 1, _ -> true));

    assertThat(figures.knownShare()).isGreaterThan(0.9);
    assertThat(figures.rmsPercent(1000)).isLessThan(1.0);
  }

  @Test
  void besideTheRouteNothingIsKnown() {
    LookAheadFigures figures =
        follow(
            TourPass.of(LARKMOOR.byTheOldRoad(), 7),
            route(LARKMOOR.overTheHarrow(), 40, 1, _ -> true));

    assertThat(figures.claims()).filteredOn(claim -> claim.tourMetres() > 5500).isEmpty();
    assertThat(
            follow(
                    TourPass.of(LARKMOOR.alongBrambleLane(), 7),
                    route(LARKMOOR.overTheHarrow(), 40, 1, _ -> true))
                .knownShare())
        .isZero();
  }

  /** A route is a sequence: where it comes by again, it leads on from the second time. */
  @Test
  void aPlacePassedTwiceIsNoPartingOfWays() {
    RouteSight sight = RouteSight.of(List.of(RoundsDriven.pass()));
    List<RoadAhead.Known> seen = new ArrayList<>();
    RoundsDriven.live(
        sight,
        metres -> {
          if (metres > 500 && metres < RoundsDriven.LENGTH_METRES - 300) {
            assertThat(sight.ahead()).as("at %.0f m", metres).isInstanceOf(RoadAhead.Known.class);
            RoadAhead.Known known = (RoadAhead.Known) sight.ahead();
            assertThat(known.branches()).as("at %.0f m", metres).isEmpty();
            boolean isByTheChange = Math.abs(metres + 225 - RoundsDriven.CHANGE_METRES) < 100;
            assertThat(known.certain().grade(4))
                .as("at %.0f m", metres)
                .isCloseTo(RoundsDriven.grade(metres + 225), within(isByTheChange ? 0.06 : 0.004));
            seen.add(known);
          }
        });
    assertThat(seen).hasSizeGreaterThan(100);
  }

  @Test
  void aTripsOwnPastServesWhenItIsDrivenAgain() {
    TourPass before = TourPass.of(LARKMOOR.overTheHarrow(), 100);
    LookAheadFigures figures = LookAheadFigures.of(HARROW, RouteSight.of(before.passes()));

    assertThat(figures.knownShare()).isGreaterThan(0.95);
    assertThat(figures.claimsOfOtherRoads()).isZero();
    assertThat(figures.rmsPercent(1000)).isLessThan(0.4);
  }

  private static double ends(LookAheadFigures.Claim claim) {
    return claim.tourMetres() + claim.aheadMetres();
  }

  private static LookAheadFigures follow(TourPass pass, Route route) {
    return LookAheadFigures.of(pass, RouteSight.of(route));
  }

  /** A route along a tour with points up to so far apart and elevations in whole metres. */
  private static Route route(
      Tour tour, double mostApart, double elevationError, DoublePredicate hasElevation) {
    Random random = new Random(11);
    List<RoutePoint> points = new ArrayList<>();
    for (double metres = 0;
        metres < tour.length();
        metres += mostApart * (0.1 + 0.9 * random.nextDouble())) {
      Road.Place place = tour.at(metres);
      double elevation = Math.rint(place.altitude() + elevationError * random.nextGaussian());
      points.add(
          new RoutePoint(
              place.latitude(),
              place.longitude(),
              hasElevation.test(metres) ? OptionalDouble.of(elevation) : OptionalDouble.empty(),
              Optional.empty()));
    }
    return new Route("", List.of(RouteSegment.of(points.toArray(RoutePoint[]::new))));
  }
}
