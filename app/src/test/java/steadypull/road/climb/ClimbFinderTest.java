package steadypull.road.climb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import steadypull.demo.road.Country;
import steadypull.demo.road.Tour;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;

/** Climbs in profiles whose truth is known. */
class ClimbFinderTest {
  private static final Country LARKMOOR = Country.larkmoor();

  /** By hand from the knots of the Harrow Road: grade 5.0 and 5.9 %, their half below 3 %. */
  @Test
  void theHarrowHasTwoClimbsThatBeginAndEndWhereItsKnotsSay() {
    List<Climb> climbs = find(TourProfile.truth(LARKMOOR.overTheHarrow()));

    assertThat(climbs).hasSize(2);
    Climb first = climbs.getFirst();
    // 2 % at 5200 m, 5.4 % at 6000 m: 2.6 % at 5340 m; 5.2 % at 9400, 0.6 % at 10200: at 9850 m
    assertThat(first.startMetres()).isCloseTo(5340, within(40.0));
    assertThat(first.startMetres() + first.lengthMetres()).isCloseTo(9850, within(40.0));
    // trapezia between the knots: 26.4 + 78.4 + 110 + 17.5 m
    assertThat(first.riseMetres()).isCloseTo(232, within(4.0));
    assertThat(first.meanGrade()).isCloseTo(0.0515, within(0.001));
    // knot of 5.8 % at 7400 m, less what 200 m around it take off
    assertThat(first.steepestGrade()).isCloseTo(0.058, within(0.0005));
    assertThat(first.meanKilometresPerHour()).isCloseTo(72, within(0.5));
    // 3 % between 0.5 % at 13800 m and 4 % at 14600 m; between 6.7 % at 18600 and 1 % at 19600
    Climb second = climbs.getLast();
    assertThat(second.startMetres()).isCloseTo(14_371, within(40.0));
    assertThat(second.startMetres() + second.lengthMetres()).isCloseTo(19_249, within(40.0));
    assertThat(climbs).allMatch(Climb::isWhole);
  }

  /**
   * Noise of 0.5 %, each time another, that lasts 50 m. A climb's end may move by 200 m, or as far
   * as the road's own grade stays within half as much again of what it is there.
   */
  @Test
  void noiseMovesNoClimb() {
    for (Tour tour : LARKMOOR.tours()) {
      RoadPass truth = TourProfile.truth(tour);
      List<Climb> expected = find(truth);
      for (int seed = 0; seed < 60; seed++) {
        List<Climb> found = find(TourProfile.noisy(truth, 0.005, 50, seed));
        assertThat(found).as("%s, seed %d", tour.name(), seed).hasSameSizeAs(expected);
        for (int i = 0; i < found.size(); i++) {
          String where = "%s, climb %d, seed %d".formatted(tour.name(), i + 1, seed);
          assertNear(truth, start(found.get(i)), start(expected.get(i)), where);
          assertNear(truth, end(found.get(i)), end(expected.get(i)), where);
        }
      }
    }
  }

  private static void assertNear(RoadPass truth, double found, double expected, String where) {
    double slack = Math.max(200, alike(truth, expected));
    assertThat(found).as(where).isCloseTo(expected, within(slack));
  }

  /** How far around a place the grade stays within 0.75 % of what it is there, m. */
  private static double alike(RoadPass truth, double metres) {
    double here = grade(truth, metres);
    double apart = 0;
    while (apart < 2000
        && (Math.abs(grade(truth, metres + apart) - here) < 0.0075
            || Math.abs(grade(truth, metres - apart) - here) < 0.0075)) {
      apart += TourProfile.STEP_METRES;
    }
    return apart;
  }

  private static double grade(RoadPass pass, double metres) {
    int point = (int) Math.round(metres / TourProfile.STEP_METRES);
    return pass.points().get(Math.clamp(point, 0, pass.points().size() - 1)).grade();
  }

  /** A descent is a climb to whoever comes the other way. */
  @Test
  void theClimbsOfTheWayBackAreTheDescentsOfTheWayThere() {
    for (Tour tour : LARKMOOR.tours()) {
      RoadPass there = TourProfile.truth(tour);
      double length = there.lengthMetres();
      List<Climb> back = find(TourProfile.reversed(there));
      List<Climb> descents = find(TourProfile.upsideDown(there)).reversed();

      assertThat(back).as(tour.name()).hasSameSizeAs(descents);
      for (int i = 0; i < back.size(); i++) {
        assertThat(start(back.get(i))).isCloseTo(length - end(descents.get(i)), within(41.0));
        assertThat(end(back.get(i))).isCloseTo(length - start(descents.get(i)), within(41.0));
        assertThat(back.get(i).riseMetres()).isCloseTo(descents.get(i).riseMetres(), within(1.0));
      }
    }
  }

  @Test
  void levelRoadBeforeAndAfterChangesNothing() {
    RoadPass alone = TourProfile.truth(LARKMOOR.backOverTheHarrow());
    List<Climb> among = find(TourProfile.amongLevelRoad(alone, 6000, 9000));

    List<Climb> expected = find(alone);
    assertThat(among).hasSameSizeAs(expected);
    for (int i = 0; i < among.size(); i++) {
      assertThat(start(among.get(i))).isCloseTo(start(expected.get(i)) + 6000, within(1e-6));
      assertThat(among.get(i).lengthMetres())
          .isCloseTo(expected.get(i).lengthMetres(), within(1e-6));
      assertThat(among.get(i).riseMetres()).isCloseTo(expected.get(i).riseMetres(), within(1e-6));
    }
  }

  @Test
  void whereNobodyKnowsThePlaceTheClimbsAreTheSame() {
    RoadPass placed = TourProfile.truth(LARKMOOR.toTheFell());
    List<Climb> unplaced = find(TourProfile.unplaced(placed));

    assertThat(unplaced).hasSize(2).allMatch(climb -> climb.spots().isEmpty());
    assertThat(unplaced)
        .extracting(Climb::startMetres)
        .isEqualTo(find(placed).stream().map(Climb::startMetres).toList());
  }

  @Test
  void anythingLessIsNoClimb() {
    assertThat(find(hill(0.06, 600))).isEmpty(); // 36 m
    assertThat(find(hill(0.2, 200))).isEmpty(); // steep, but short
    assertThat(find(hill(0.015, 5000))).isEmpty(); // 75 m, but hardly steep
    assertThat(find(hill(0.06, 1000))).hasSize(1);
    assertThat(find(hill(0.025, 4000))).hasSize(1);
  }

  @Test
  void aDipDoesNotEndAClimbButAValleyDoes() {
    // 0.05 over 3 km either side: 300 m of level road, 2 m lost
    assertThat(find(road(1000, 0, 3000, 0.05, 300, 0, 3000, 0.05, 1000, 0))).hasSize(1);
    assertThat(find(road(1000, 0, 3000, 0.05, 200, -0.01, 3000, 0.05, 1000, 0))).hasSize(1);
    assertThat(find(road(1000, 0, 3000, 0.05, 1500, 0, 3000, 0.05, 1000, 0))).hasSize(2);
    assertThat(find(road(1000, 0, 3000, 0.05, 500, -0.04, 3000, 0.05, 1000, 0))).hasSize(2);
    // long climbs forgive more: 500 m each side of 1 km of level road
    assertThat(find(road(1000, 0, 8000, 0.06, 1000, 0, 8000, 0.06, 1000, 0))).hasSize(1);
  }

  @Test
  void aTripThatBreaksOffWithinAClimbSaysSo() {
    RoadPass whole = TourProfile.truth(LARKMOOR.overTheHarrow());
    Climb broken = find(TourProfile.part(whole, 0, 8000)).getFirst();
    Climb joined = find(TourProfile.part(whole, 7000, 13_000)).getFirst();

    assertThat(broken.begun()).isEqualTo(Climb.End.ROAD);
    assertThat(broken.ended()).isEqualTo(Climb.End.RECORD);
    assertThat(joined.begun()).isEqualTo(Climb.End.RECORD);
    assertThat(joined.ended()).isEqualTo(Climb.End.ROAD);
    assertThat(joined.startMetres()).isCloseTo(7000, within(1.0));
  }

  @Test
  void whoTurnsAroundOnAClimbIsSeenToDoSo() {
    Climb climb = find(TourProfile.truth(LARKMOOR.turnedAround())).getFirst();

    assertThat(climb.ended()).isEqualTo(Climb.End.TURN);
    assertThat(climb.isWhole()).isFalse();
  }

  /** Turning back on the Quarry Bends, limbs 50 m apart, is no turning around. */
  @Test
  void hairpinsAreNoTurning() {
    List<Climb> climbs = find(TourProfile.truth(LARKMOOR.upTheQuarryBends()));

    assertThat(climbs).hasSize(1).allMatch(Climb::isWhole);
    assertThat(climbs.getFirst().riseMetres()).isGreaterThan(300);
  }

  @Test
  void aShortGapIsBridgedWithOrWithoutPlaces() {
    RoadPass whole = TourProfile.truth(LARKMOOR.overTheHarrow());
    Climb expected = find(whole).getFirst();
    List<RoadPass> placed = TourProfile.parted(whole, 7000, 8300, true);
    List<RoadPass> unplaced = TourProfile.parted(TourProfile.unplaced(whole), 7000, 8300, false);

    for (List<RoadPass> parted : List.of(placed, unplaced)) {
      Climb found = ClimbFinder.find(parted).getFirst();
      assertThat(found.gapSeconds()).isCloseTo(65, within(1.5));
      assertThat(found.lengthMetres()).isCloseTo(expected.lengthMetres(), within(60.0));
      assertThat(found.riseMetres()).isCloseTo(expected.riseMetres(), within(3.0));
      assertThat(found.isWhole()).isTrue();
    }
  }

  @Test
  void aLongGapPartsAClimb() {
    RoadPass whole = TourProfile.truth(LARKMOOR.overTheHarrow());
    RoadPass first = TourProfile.part(whole, 0, 7000);
    List<PassPoint> later = new ArrayList<>();
    for (PassPoint point : TourProfile.part(whole, 7100, 13_000).points()) {
      later.add(
          new PassPoint(
              point.seconds() + 400,
              point.metres(),
              point.place(),
              point.heightMetres(),
              point.grade(),
              point.gradeError()));
    }

    List<Climb> climbs = ClimbFinder.find(List.of(first, new RoadPass(later)));

    assertThat(climbs).extracting(Climb::ended).containsExactly(Climb.End.RECORD, Climb.End.ROAD);
    assertThat(climbs).extracting(Climb::begun).containsExactly(Climb.End.ROAD, Climb.End.RECORD);
  }

  @Test
  void noRoadHasNoClimbs() {
    assertThat(ClimbFinder.find(List.of())).isEmpty();
    assertThat(find(TourProfile.part(TourProfile.truth(LARKMOOR.overTheHarrow()), 0, 10)))
        .isEmpty();
  }

  private static RoadPass hill(double grade, double metres) {
    return road(2000, 0, metres, grade, 2000, 0);
  }

  /** Pairs of metres and grade. */
  private static RoadPass road(double... pairs) {
    List<PassPoint> points = new ArrayList<>();
    double metres = 0;
    double height = 0;
    for (int pair = 0; pair < pairs.length; pair += 2) {
      for (double along = 0; along < pairs[pair]; along += TourProfile.STEP_METRES) {
        double grade = pairs[pair + 1];
        points.add(
            new PassPoint(
                metres / TourProfile.METRES_PER_SECOND,
                metres,
                Optional.empty(),
                height,
                grade,
                0.002));
        metres += TourProfile.STEP_METRES;
        height += grade * TourProfile.STEP_METRES;
      }
    }
    return new RoadPass(points);
  }

  private static List<Climb> find(RoadPass pass) {
    return ClimbFinder.find(List.of(pass));
  }

  private static double start(Climb climb) {
    return climb.startMetres();
  }

  private static double end(Climb climb) {
    return climb.startMetres() + climb.lengthMetres();
  }
}
