package steadypull.road.climb;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadypull.road.FlatGround;

/** The same climb, a part of it, and others that are easily taken for it. */
class ClimbRecognitionTest {
  private static final double STEP_METRES = 20;
  private static final FlatGround GROUND = FlatGround.around(12.34, -45.67);

  /** A winding road; a receiver's slow error and its noise come on top. */
  private record Way(double aside, double from, double to, boolean isBack) {
    static final Way WHOLE = new Way(0, 0, 5000, false);

    FlatGround.Spot spot(double metres) {
      double along = isBack ? to - metres : from + metres;
      double bend = 150 * Math.sin(along / 400);
      return new FlatGround.Spot(along * 0.95, bend + aside);
    }
  }

  @Test
  void theSamePlaceIsTheSameClimbForEveryReceiver() {
    ClimbCollection known = knowing(climb(GROUND, Way.WHOLE, 1));
    for (int seed = 2; seed < 100; seed++) {
      assertThat(identify(known, climb(GROUND, Way.WHOLE, seed)))
          .isInstanceOf(ClimbIdentity.Known.class);
    }
  }

  @Test
  void theOtherDirectionIsAnotherClimb() {
    ClimbCollection known = knowing(climb(GROUND, Way.WHOLE, 1));

    ClimbIdentity back = identify(known, climb(GROUND, new Way(0, 0, 5000, true), 2));

    assertThat(id(back)).isNotEqualTo(known.all().getFirst().id());
  }

  /** The nearest two lanes of one road are a few metres apart, two roads hardly less than 25 m. */
  @Test
  void aRoadBesideItIsAnotherClimbAndHasAnotherId() {
    ClimbCollection known = knowing(climb(GROUND, Way.WHOLE, 1));
    for (int seed = 2; seed < 60; seed++) {
      ClimbIdentity beside = identify(known, climb(GROUND, new Way(30, 0, 5000, false), seed));
      assertThat(id(beside)).isNotEqualTo(known.all().getFirst().id());
    }
  }

  @Test
  void whereBothRoadsAreKnownTheNearestIsMeant() {
    ClimbCollection known = knowing(climb(GROUND, Way.WHOLE, 1));
    Way other = new Way(22, 0, 5000, false);
    identifyAndKeep(known, climb(GROUND, other, 2));

    assertThat(known.all()).hasSize(2);
    assertThat(id(identify(known, climb(GROUND, other, 3)))).isEqualTo(known.all().get(1).id());
    assertThat(id(identify(known, climb(GROUND, Way.WHOLE, 4))))
        .isEqualTo(known.all().getFirst().id());
  }

  @Test
  void whoJoinsHalfwayDrivesAPart() {
    ClimbCollection known = knowing(climb(GROUND, Way.WHOLE, 1));

    ClimbIdentity joined = identify(known, climb(GROUND, new Way(0, 2000, 5000, false), 2));

    assertThat(joined).isInstanceOf(ClimbIdentity.Part.class);
    ClimbIdentity.Part part = (ClimbIdentity.Part) joined;
    assertThat(part.climb()).isEqualTo(known.all().getFirst());
    // bends make the way 3 % longer than the metres of this test
    assertThat(part.fromMetres()).isBetween(1900.0, 2200.0);
    assertThat(part.toMetres()).isGreaterThan(4800);
  }

  @Test
  void whatLeadsBeyondAKnownClimbIsAnother() {
    ClimbCollection known = knowing(climb(GROUND, new Way(0, 0, 3000, false), 1));

    assertThat(identify(known, climb(GROUND, Way.WHOLE, 2))).isInstanceOf(ClimbIdentity.New.class);
  }

  @Test
  void aBrokenOffClimbIsNotRememberedButRecognised() {
    Climb broken = climb(GROUND, new Way(0, 0, 3000, false), 2, Climb.End.RECORD);

    assertThat(identify(new ClimbCollection(List.of()), broken))
        .isInstanceOf(ClimbIdentity.Fragment.class);
    assertThat(identify(knowing(climb(GROUND, Way.WHOLE, 1)), broken))
        .isInstanceOf(ClimbIdentity.Part.class);
  }

  @Test
  void withoutPlacesThereIsNoIdentity() {
    Climb placed = climb(GROUND, Way.WHOLE, 1);
    Climb few = with(placed, placed.spots().subList(0, 10));

    assertThat(identify(knowing(placed), few)).isInstanceOf(ClimbIdentity.Unplaced.class);
  }

  /** A road that leaves the known one for its last kilometre. */
  @Test
  void aForkNearTheTopLeadsToAnotherClimb() {
    ClimbCollection known = knowing(climb(GROUND, Way.WHOLE, 1));
    Climb forked = climb(GROUND, Way.WHOLE, 2);
    List<Climb.Spot> spots = new ArrayList<>();
    for (Climb.Spot spot : forked.spots()) {
      double away = Math.max(0, spot.metres() - 4200);
      spots.add(
          new Climb.Spot(
              spot.metres(),
              spot.rise(),
              spot.latitudeDegrees() + away / 111_000,
              spot.longitudeDegrees()));
    }

    assertThat(identify(known, with(forked, spots))).isInstanceOf(ClimbIdentity.New.class);
  }

  /** As in a long tunnel at its foot. */
  @Test
  void aClimbWhoseFirstKilometreHasNoPlaceIsRecognised() {
    Climb placed = climb(GROUND, Way.WHOLE, 1);
    Climb tunnel = with(placed, placed.spots().subList(50, placed.spots().size()));

    assertThat(identify(knowing(climb(GROUND, Way.WHOLE, 2)), tunnel))
        .isInstanceOf(ClimbIdentity.Known.class);
    // but it is not remembered: its line would begin a kilometre too late
    assertThat(identify(nothing(), tunnel)).isInstanceOf(ClimbIdentity.Unplaced.class);
  }

  @Test
  void theDateLineIsNoObstacle() {
    FlatGround dateLine = FlatGround.around(-38, 179.98);
    ClimbCollection known = knowing(climb(dateLine, Way.WHOLE, 1));

    assertThat(identify(known, climb(dateLine, Way.WHOLE, 2)))
        .isInstanceOf(ClimbIdentity.Known.class);
  }

  /**
   * Two libraries that never met give one climb the same id, unless it lies at the edge of a cell:
   * 2.2 km wide, the middle of the climb known within 20 m, both ways: less than one in twenty.
   */
  @Test
  void librariesThatNeverMetMostlyGiveTheSameId() {
    int different = 0;
    Random random = new Random(3);
    for (int place = 0; place < 200; place++) {
      FlatGround ground =
          FlatGround.around(100 * random.nextDouble() - 50, 360 * random.nextDouble() - 180);
      String here = id(identify(nothing(), climb(ground, Way.WHOLE, 2L * place)));
      String there = id(identify(nothing(), climb(ground, Way.WHOLE, 2L * place + 1)));
      different += here.equals(there) ? 0 : 1;
    }
    assertThat(different).isLessThan(20);
  }

  private static ClimbCollection nothing() {
    return new ClimbCollection(List.of());
  }

  private static ClimbCollection knowing(Climb climb) {
    ClimbCollection known = nothing();
    identifyAndKeep(known, climb);
    assertThat(known.all()).hasSize(1);
    return known;
  }

  private static void identifyAndKeep(ClimbCollection known, Climb climb) {
    if (identify(known, climb) instanceof ClimbIdentity.New found) {
      known.add(found.climb());
    }
  }

  private static ClimbIdentity identify(KnownClimbs known, Climb climb) {
    return new ClimbRecognition(known).identify(climb);
  }

  private static String id(ClimbIdentity identity) {
    return switch (identity) {
      case ClimbIdentity.Known(KnownClimb climb) -> climb.id();
      case ClimbIdentity.New(KnownClimb climb) -> climb.id();
      case ClimbIdentity.Part part -> "part of " + part.climb().id();
      case ClimbIdentity.Fragment(), ClimbIdentity.Unplaced() -> "";
    };
  }

  private static Climb climb(FlatGround ground, Way way, long seed) {
    return climb(ground, way, seed, Climb.End.ROAD);
  }

  /** 5 %, 72 km/h; the receiver wanders by 3 m and errs by 2 m more at every point. */
  private static Climb climb(FlatGround ground, Way way, long seed, Climb.End ended) {
    Random random = new Random(seed);
    double length = way.to() - way.from();
    double east = 3 * random.nextGaussian();
    double north = 3 * random.nextGaussian();
    List<Climb.Spot> spots = new ArrayList<>();
    for (double metres = 0; metres <= length; metres += STEP_METRES) {
      FlatGround.Spot spot = way.spot(metres);
      spots.add(
          new Climb.Spot(
              metres,
              metres * 0.05,
              ground.latitude(spot.north() + north + 2 * random.nextGaussian()),
              ground.longitude(spot.east() + east + 2 * random.nextGaussian())));
    }
    return new Climb(
        100, 100 + length / 20, 2000, length, length * 0.05, 0.05, Climb.End.ROAD, ended, 0, spots);
  }

  private static Climb with(Climb climb, List<Climb.Spot> spots) {
    return new Climb(
        climb.startSeconds(),
        climb.endSeconds(),
        climb.startMetres(),
        climb.lengthMetres(),
        climb.riseMetres(),
        climb.steepestGrade(),
        climb.begun(),
        climb.ended(),
        climb.gapSeconds(),
        spots);
  }
}
