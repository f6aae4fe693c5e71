package steadypull.road.memory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import steadypull.demo.road.Country;
import steadypull.demo.road.Tour;
import steadypull.road.RoadAhead;
import steadypull.road.Route;
import steadypull.road.TourRoutes;

/** An imported route, and a trip's own past, as a sight of the road ahead. */
class RouteSightTest {
  private static final Country LARKMOOR = Country.larkmoor();
  private static final TourPass HARROW = TourPass.of(LARKMOOR.overTheHarrow(), 7);

  @Test
  void aRouteWithElevationsTellsTheRoadAhead() {
    LookAheadFigures figures =
        follow(HARROW, TourRoutes.along(LARKMOOR.overTheHarrow(), 40, 1, _ -> true));

    assertThat(figures.recognisedMetres().orElseThrow()).isLessThan(500);
    assertThat(figures.knownShare()).isGreaterThan(0.95);
    // elevations in whole metres that err by 1 m: 0.7 % over 300 m is told, see the next
    assertThat(figures.rmsPercent(1000)).isLessThan(0.8);
  }

  /** Equation of the slope's error: that of two heights over their distance. */
  @Test
  void theErrorThatIsToldCoversTheErrorThatIsMade() {
    Tour tour = LARKMOOR.overTheHarrow();
    RouteSight sight = RouteSight.of(TourRoutes.along(tour, 40, 2, _ -> true));
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
        TourRoutes.along(
            LARKMOOR.overTheHarrow(), 40, 0.5, metres -> metres < 6000 || metres > 9000);
    LookAheadFigures figures = follow(HARROW, route);

    assertThat(figures.claims())
        .isNotEmpty()
        .noneMatch(claim -> claim.tourMetres() < 9000 && ends(claim) > 6100)
        .anyMatch(claim -> claim.tourMetres() > 9500)
        .anyMatch(claim -> ends(claim) > 5500 && ends(claim) < 6100);
  }

  @Test
  void aRouteWithoutElevationsTellsNothing() {
    RouteSight sight = RouteSight.of(TourRoutes.withoutElevations(LARKMOOR.overTheHarrow()));
    List<Double> ungraded = new ArrayList<>();
    HARROW.live(
        sight,
        second -> {
          assertThat(sight.ahead()).isNotInstanceOf(RoadAhead.Known.class);
          if (sight.ahead() instanceof RoadAhead.Ungraded) {
            ungraded.add(HARROW.metres(second));
          }
        });

    assertThat(ungraded.getFirst()).as("but where it leads is known").isLessThan(700);
    assertThat(ungraded).hasSizeGreaterThan(500);
  }

  /**
   * The route turns off to the Fell, where one in three went before. What is remembered says how
   * steep either way is, the route says which is meant.
   */
  @Test
  void aRouteWithoutElevationsTellsWhichOfTheRememberedWaysIsMeant() {
    RoadMemory memory = RoadsDriven.times(2, LARKMOOR.overTheHarrow());
    RoadsDriven.learn(memory, TourPass.of(LARKMOOR.toTheFell(), 100));
    TourPass drive = TourPass.of(LARKMOOR.toTheFell(), 7);
    RouteLine line = RouteLine.of(TourRoutes.withoutElevations(LARKMOOR.toTheFell()));
    RouteSight sight = line.sight();
    sight.take(line.gradedBy(memory));

    LookAheadFigures followed = LookAheadFigures.of(drive, sight);
    LookAheadFigures remembered = LookAheadFigures.of(drive, new RoadMatcher(memory));

    assertThat(followed.claimsOfOtherRoads()).isZero();
    assertThat(followed.rmsPercent(2000)).isLessThan(0.4);
    long fork = (long) LARKMOOR.toTheFell().stretches().getFirst().to();
    assertThat(followed.claims().stream().filter(claim -> isBeyond(claim, fork)).count())
        .as("what is told beyond the fork before it is reached")
        .isGreaterThan(100)
        .isGreaterThan(
            10 * remembered.claims().stream().filter(claim -> isBeyond(claim, fork)).count());
  }

  private static boolean isBeyond(LookAheadFigures.Claim claim, long fork) {
    return claim.tourMetres() < fork - 100 && ends(claim) > fork + 300;
  }

  @Test
  void whatWasDrivenIsBelievedBeforeElevationsAndThatIsSaid() {
    RouteLine line = RouteLine.of(TourRoutes.along(LARKMOOR.overTheHarrow(), 40, 2, _ -> true));

    assertThat(origins(line.sight())).containsOnly(RoadAhead.Origin.ROUTE);
    assertThat(origins(graded(line, LARKMOOR.byTheOldRoad())))
        .as("the first 4 km were driven, the rest was not")
        .containsExactlyInAnyOrder(RoadAhead.Origin.ROUTE_AND_DRIVEN, RoadAhead.Origin.ROUTE);
    assertThat(origins(graded(line, LARKMOOR.overTheHarrow())))
        .containsOnly(RoadAhead.Origin.DRIVEN);
    assertThat(LookAheadFigures.of(HARROW, graded(line, LARKMOOR.overTheHarrow())).rmsPercent(1000))
        .isLessThan(0.4);
  }

  private static RouteSight graded(RouteLine line, Tour driven) {
    RouteSight sight = line.sight();
    sight.take(line.gradedBy(RoadsDriven.times(1, driven)));
    return sight;
  }

  private static Set<RoadAhead.Origin> origins(RouteSight sight) {
    Set<RoadAhead.Origin> origins = EnumSet.noneOf(RoadAhead.Origin.class);
    HARROW.live(
        sight,
        second -> {
          // behind that the look ahead of 15 km reaches the last metres, which nobody drove
          if (HARROW.metres(second) < 9500 && sight.ahead() instanceof RoadAhead.Known known) {
            origins.add(known.origin());
          }
        });
    return origins;
  }

  /** Whoever drives home along the way that was planned there. */
  @Test
  void aRouteDrivenBackwardsTellsTheOppositeGrades() {
    TourPass back = TourPass.of(LARKMOOR.backOverTheHarrow(), 7);
    RouteLine line = RouteLine.of(TourRoutes.along(LARKMOOR.overTheHarrow(), 40, 1, _ -> true));
    RouteSight remembering = line.sight();
    remembering.take(line.gradedBy(RoadsDriven.times(1, LARKMOOR.backOverTheHarrow())));

    LookAheadFigures byElevations = LookAheadFigures.of(back, line.sight());
    LookAheadFigures byBoth = LookAheadFigures.of(back, remembering);

    assertThat(byElevations.recognisedMetres().orElseThrow()).isLessThan(500);
    assertThat(byElevations.knownShare()).isGreaterThan(0.95);
    assertThat(byElevations.rmsPercent(1000)).isLessThan(0.8);
    assertThat(byBoth.rmsPercent(1000)).isLessThan(0.4);
  }

  /** Off the main road at the fork, a turn on the Fell, back down and on along the route. */
  @Test
  void aRouteThatIsLeftIsTakenAgainWhenTheVehicleComesBack() {
    Tour.Stretch main = LARKMOOR.toTheFell().stretches().getFirst();
    Tour.Stretch fell = LARKMOOR.toTheFell().stretches().getLast();
    Tour detour =
        new Tour(
            "a detour",
            LARKMOOR,
            List.of(
                main,
                new Tour.Stretch(fell.street(), 0, 2500),
                new Tour.Stretch(fell.street(), 2500, 0),
                new Tour.Stretch(main.street(), main.to(), main.street().length())));
    TourPass drive = TourPass.of(detour, 7);
    RouteSight sight = RouteSight.of(TourRoutes.along(LARKMOOR.overTheHarrow(), 40, 1, _ -> true));
    List<Double> onRoute = new ArrayList<>();
    drive.live(
        sight,
        second -> {
          if (sight.ahead() instanceof RoadAhead.Known) {
            onRoute.add(drive.metres(second));
          }
        });

    double left = main.to();
    assertThat(onRoute).filteredOn(metres -> metres < left).hasSizeGreaterThan(300);
    // the last metres before the fork could be the route's, driven the other way
    assertThat(onRoute).filteredOn(metres -> metres > left + 600 && metres < left + 4900).isEmpty();
    assertThat(onRoute)
        .filteredOn(metres -> metres > left + 5000)
        .first()
        .satisfies(metres -> assertThat(metres).isLessThan(left + 5700));
  }

  /** A straight line over 3 km is no road. */
  @Test
  void whereItsPointsAreFarApartNobodyIsOnTheRoute() {
    RouteLine line = RouteLine.of(TourRoutes.everyMetres(LARKMOOR.overTheHarrow(), 3000));

    assertThat(line.lengthMetres()).isZero();
    assertThat(LookAheadFigures.of(HARROW, line.sight()).knownShare()).isZero();
  }

  @Test
  void pointsAtRandomDistancesServeTheSame() {
    LookAheadFigures figures =
        follow(HARROW, TourRoutes.along(LARKMOOR.overTheHarrow(), 200, 1, _ -> true));

    assertThat(figures.knownShare()).isGreaterThan(0.9);
    assertThat(figures.rmsPercent(1000)).isLessThan(1.0);
  }

  @Test
  void besideTheRouteNothingIsKnown() {
    LookAheadFigures figures =
        follow(
            TourPass.of(LARKMOOR.byTheOldRoad(), 7),
            TourRoutes.along(LARKMOOR.overTheHarrow(), 40, 1, _ -> true));

    assertThat(figures.claims()).filteredOn(claim -> claim.tourMetres() > 5500).isEmpty();
    assertThat(
            follow(
                    TourPass.of(LARKMOOR.alongBrambleLane(), 7),
                    TourRoutes.along(LARKMOOR.overTheHarrow(), 40, 1, _ -> true))
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
}
