package steadypull.road.memory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.demo.road.Country;
import steadypull.demo.road.ReceiverQuality;
import steadypull.demo.road.Tour;
import steadypull.road.RoadAhead;

/** Drives through the country over roads that are remembered, half remembered and unknown. */
class RoadMatcherTest {
  private static final Country LARKMOOR = Country.larkmoor();
  private static final long SEED = 7;

  /** Where the old road has come 30 m beside the Harrow, and where it turns away. */
  private static final double BESIDE_FROM = 5250;

  private static final double BESIDE_TO = 8400;

  @Test
  void aKnownRoadIsRecognisedWithinFiveHundredMetres() {
    RoadMemory memory = RoadsDriven.times(1, LARKMOOR.tours());
    for (Tour tour : LARKMOOR.tours()) {
      for (ReceiverQuality quality : List.of(ReceiverQuality.usual(), ReceiverQuality.poor())) {
        LookAheadFigures figures =
            LookAheadFigures.of(TourPass.of(tour, SEED, quality), new RoadMatcher(memory));

        assertThat(figures.recognisedMetres().orElseThrow()).as(tour.name()).isLessThan(500);
        assertThat(figures.knownShare()).as(tour.name()).isGreaterThan(0.85);
      }
    }
  }

  @Test
  void aRoadNobodyDroveIsUnknown() {
    RoadMemory memory = RoadsDriven.times(2, LARKMOOR.upTheQuarryBends());

    assertThat(drive(LARKMOOR.alongBrambleLane(), memory).knownShare()).isZero();
  }

  @Test
  void aParallelRoadIsNotTakenForTheKnownOne() {
    RoadMemory memory = RoadsDriven.times(2, LARKMOOR.overTheHarrow());
    LookAheadFigures figures = drive(LARKMOOR.byTheOldRoad(), memory);

    assertThat(figures.claims())
        .filteredOn(claim -> claim.tourMetres() > BESIDE_FROM + 100)
        .isEmpty();
  }

  @Test
  void parallelRoadsAreEachKnownByTheirOwnGrades() {
    RoadMemory memory = RoadsDriven.times(2, LARKMOOR.overTheHarrow(), LARKMOOR.byTheOldRoad());
    for (Tour tour : List.of(LARKMOOR.overTheHarrow(), LARKMOOR.byTheOldRoad())) {
      LookAheadFigures figures = drive(tour, memory);

      assertThat(figures.claimsOfOtherRoads()).as(tour.name()).isZero();
      assertThat(figures.claims())
          .as(tour.name())
          .filteredOn(claim -> claim.tourMetres() > BESIDE_FROM && claim.tourMetres() < BESIDE_TO)
          .hasSizeGreaterThan(200);
    }
  }

  @Test
  void aLaneOnABridgeAndTheRoadBelowDoNotMix() {
    RoadMemory both = RoadsDriven.times(2, LARKMOOR.overTheHarrow(), LARKMOOR.alongBrambleLane());
    RoadMemory lane = RoadsDriven.times(2, LARKMOOR.alongBrambleLane());

    assertThat(drive(LARKMOOR.overTheHarrow(), both).claimsOfOtherRoads()).isZero();
    assertThat(drive(LARKMOOR.alongBrambleLane(), both).claimsOfOtherRoads()).isZero();
    assertThat(drive(LARKMOOR.overTheHarrow(), lane).knownShare()).isZero();
  }

  @Test
  void whereWaysPartEachIsOfferedWithItsOdds() {
    RoadMemory memory = RoadsDriven.times(3, LARKMOOR.overTheHarrow());
    RoadsDriven.learn(memory, TourPass.of(LARKMOOR.toTheFell(), 100));
    RoadAhead.Known known = aheadAt(12_000, LARKMOOR.overTheHarrow(), memory);

    // the fork lies at 14 000 m, and for 250 m more both ways are within 20 m; after three against
    // one: (3 + 1/2) / (4 + 3/2), (1 + 1/2) / 5.5
    assertThat(known.certain().lengthMetres()).isBetween(1900.0, 2350.0);
    assertThat(known.branches()).hasSize(2);
    assertThat(known.branches().get(0).odds()).isCloseTo(3.5 / 5.5, within(1e-6));
    assertThat(known.branches().get(1).odds()).isCloseTo(1.5 / 5.5, within(1e-6));
    // 1300 m behind the fork: 6.4 % and more on the Harrow, 8.3 % up to the Fell
    assertThat(grade(known.branches().get(0), 1300)).isCloseTo(0.064, within(0.006));
    assertThat(grade(known.branches().get(1), 1300)).isCloseTo(0.084, within(0.006));
  }

  @Test
  void behindAForkOnlyTheWayThatWasTakenIsClaimed() {
    RoadMemory memory = RoadsDriven.times(2, LARKMOOR.overTheHarrow(), LARKMOOR.toTheFell());

    assertThat(drive(LARKMOOR.overTheHarrow(), memory).claimsOfOtherRoads()).isZero();
    assertThat(drive(LARKMOOR.toTheFell(), memory).claimsOfOtherRoads()).isZero();
  }

  @Test
  void whoTurnsAroundSoonSeesTheWayBack() {
    RoadMemory memory =
        RoadsDriven.times(2, LARKMOOR.overTheHarrow(), LARKMOOR.backOverTheHarrow());
    LookAheadFigures figures = drive(LARKMOOR.turnedAround(), memory);

    // until the turn at 9000 m the road straight on is claimed: nobody can know
    // a receiver's fixes show it some 25 m later
    assertThat(figures.claims())
        .filteredOn(claim -> claim.tourMetres() > 9060)
        .hasSizeGreaterThan(300)
        .noneMatch(LookAheadFigures.Claim::isOfOtherRoad);
  }

  /** Whoever drove there this morning knows the way home. */
  @Test
  void theWayBackIsKnownFromTheWayThereButLessSurely() {
    RoadMemory memory = RoadsDriven.times(1, LARKMOOR.overTheHarrow());
    LookAheadFigures back = drive(LARKMOOR.backOverTheHarrow(), memory);

    assertThat(back.knownShare()).isGreaterThan(0.9);
    assertThat(back.claimsOfOtherRoads()).isZero();
    assertThat(back.rmsPercent(1000)).isLessThan(0.5);
    double there = aheadAt(4000, LARKMOOR.overTheHarrow(), memory).certain().error(10);
    double home = aheadAt(4000, LARKMOOR.backOverTheHarrow(), memory).certain().error(10);
    assertThat(home).isGreaterThan(0.006).isGreaterThan(1.5 * there);
  }

  @Test
  void aTunnelDoesNotStopTheLookAhead() {
    RoadMemory memory = RoadsDriven.times(2, LARKMOOR.overTheHarrow());
    // the tunnel goes from 12 000 to 12 900 m
    RoadAhead.Known inside = aheadAt(12_800, LARKMOOR.overTheHarrow(), memory);

    assertThat(inside.certain().lengthMetres()).isGreaterThan(8000);
    // 15 200 to 18 600 m: 6.4 to 6.7 %
    assertThat(LookAheadFigures.mean(inside.certain(), 3000, 5000)).isCloseTo(0.065, within(0.004));
  }

  @Test
  void limbsOfAHairpinRoadAreToldApart() {
    RoadMemory memory = RoadsDriven.times(2, LARKMOOR.upTheQuarryBends());
    for (long seed = SEED; seed < SEED + 3; seed++) {
      TourPass pass = TourPass.of(LARKMOOR.upTheQuarryBends(), seed);
      LookAheadFigures figures = LookAheadFigures.of(pass, new RoadMatcher(memory));

      assertThat(figures.knownShare()).isGreaterThan(0.85);
      assertThat(figures.claimsOfOtherRoads()).isZero();
    }
  }

  @Test
  void aPoorReceiverCostsKnowledgeBeforeItCostsTruth() {
    RoadMemory memory = RoadsDriven.times(2, LARKMOOR.tours());
    for (Tour tour : LARKMOOR.tours()) {
      TourPass pass = TourPass.of(tour, SEED, ReceiverQuality.poor());
      LookAheadFigures figures = LookAheadFigures.of(pass, new RoadMatcher(memory));

      assertThat(figures.claims().size()).as(tour.name()).isGreaterThan(100);
      assertThat((double) figures.claimsOfOtherRoads() / figures.claims().size())
          .as(tour.name())
          .isLessThan(0.01);
    }
  }

  private static LookAheadFigures drive(Tour tour, RoadMemory memory) {
    return LookAheadFigures.of(TourPass.of(tour, SEED), new RoadMatcher(memory));
  }

  private static RoadAhead.Known aheadAt(double metres, Tour tour, RoadMemory memory) {
    TourPass pass = TourPass.of(tour, SEED);
    RoadMatcher matcher = new RoadMatcher(memory);
    RoadAhead[] seen = {new RoadAhead.Unknown()};
    pass.live(
        matcher,
        second -> {
          if (second > 0 && pass.metres(second - 1) < metres && pass.metres(second) >= metres) {
            seen[0] = matcher.ahead();
          }
        });
    assertThat(seen[0]).isInstanceOf(RoadAhead.Known.class);
    return (RoadAhead.Known) seen[0];
  }

  private static double grade(RoadAhead.Branch branch, double metres) {
    return LookAheadFigures.mean(branch.profile(), metres - 100, metres + 100);
  }
}
