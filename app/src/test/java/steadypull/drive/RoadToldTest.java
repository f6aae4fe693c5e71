package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;
import steadypull.store.TripEvent;

/** When the road ahead is told anew, and where it is told to lie in between. */
class RoadToldTest {
  private static final double METRES_A_SECOND = 25;
  private static final double PIECE = 50;

  private final RoadTold told = new RoadTold();
  private long second;

  @Test
  void aRoadThatGoesOnAsToldIsToldOnce() {
    assertThat(hear(road(0, 300))).isPresent();
    for (int metres = 25; metres < 9000; metres += 25) {
      assertThat(hear(road(metres, 300 - metres / 50))).as("after %d m", metres).isEmpty();
    }
    assertThat(certain(told.ahead()).lengthMetres()).isCloseTo(15_000 - 9000, within(50.0));
  }

  /** A forecast made of a second needs what was told in it: the event lies before its end. */
  @Test
  void theEventLiesAMomentBeforeTheSecondIsOver() {
    second = 41;
    assertThat(hear(road(0, 300)).orElseThrow().timeMicros()).isEqualTo(41_999_999);
  }

  /** As in a replay, where the event is taken before the second's metres are. */
  @Test
  void whatIsToldOfTheEndOfASecondIsNotMovedByItsMetres() {
    TripEvent event = hear(road(0, 300)).orElseThrow();
    RoadTold replayed = new RoadTold();
    replayed.moved(1234);
    replayed.take(event);
    replayed.moved(METRES_A_SECOND);

    assertThat(replayed.ahead()).usingRecursiveComparison().isEqualTo(told.ahead());
    assertThat(certain(replayed.ahead()).size()).isEqualTo(300);
  }

  @Test
  void whereTheRoadEndsSoonerThanToldThatIsToldAtOnce() {
    hear(road(0, 300));
    assertThat(hear(road(25, 200))).isPresent();
  }

  @Test
  void thatMoreIsKnownOfTheSameRoadMayWaitAQuarterOfAMinute() {
    hear(road(0, 100));
    int seconds = 0;
    while (hear(road(25 * seconds, 300)).isEmpty()) {
      seconds++;
    }
    assertThat(seconds).isBetween(12, 16);
  }

  /**
   * Elevations of a file err by 1.2 %: a piece's grade there differs from each place to the next.
   */
  @Test
  void gradesThatDifferByLessThanTheyErrAreNoNews() {
    hear(graded(0.010, 0.012));
    for (int i = 0; i < 30; i++) {
      assertThat(hear(graded(0.014, 0.012))).isEmpty();
    }
    assertThat(within20Seconds(graded(0.018, 0.012))).isPresent();
  }

  @Test
  void surerGradesOfTheSameRoadAreNews() {
    hear(graded(0.010, 0.012));
    assertThat(within20Seconds(graded(0.010, 0.008))).isEmpty();
    assertThat(within20Seconds(graded(0.010, 0.002))).isPresent();
  }

  @Test
  void thatNothingIsKnownAnyMoreIsToldAtOnceAndOnce() {
    hear(road(0, 300));
    assertThat(hear(new RoadAhead.Unknown())).isPresent();
    assertThat(told.ahead()).isEqualTo(new RoadAhead.Unknown());
    assertThat(hear(new RoadAhead.Unknown())).isEmpty();
    assertThat(hear(new RoadAhead.Ungraded())).isPresent();
    assertThat(hear(new RoadAhead.Ungraded())).isEmpty();
  }

  @Test
  void aDriveThatNeverKnowsAnythingKeepsNothing() {
    for (int i = 0; i < 100; i++) {
      assertThat(hear(new RoadAhead.Unknown())).isEmpty();
    }
  }

  @Test
  void otherOddsAtTheForkAreToldAtOnce() {
    hear(forked(0.5));
    assertThat(hear(forked(0.52))).isEmpty();
    assertThat(hear(forked(0.7))).isPresent();
  }

  @Test
  void behindTheEndOfWhatWasToldNothingIsKnown() {
    told.take(hear(road(0, 4)).orElseThrow());
    told.moved(0);
    for (int i = 0; i < 12; i++) {
      told.moved(METRES_A_SECOND);
    }
    assertThat(told.ahead()).isEqualTo(new RoadAhead.Unknown());
  }

  /** A forecast looks ten minutes ahead: what lies beyond 20 km costs octets and tells nothing. */
  @Test
  void moreThanTwentyKilometresAreNeverToldOfAnyWay() {
    RoadAhead.Branch far = new RoadAhead.Branch(0.9, certain(road(0, 3000)));
    hear(new RoadAhead.Known(certain(road(0, 100)), List.of(far)));
    RoadAhead.Known known = (RoadAhead.Known) told.ahead();
    assertThat(known.branches().getFirst().profile().lengthMetres()).isEqualTo(20_000);

    hear(new RoadAhead.Known(certain(road(0, 3000)), List.of(far)));
    assertThat(certain(told.ahead()).lengthMetres()).isEqualTo(20_000);
    assertThat(((RoadAhead.Known) told.ahead()).branches()).isEmpty();
  }

  private Optional<TripEvent> hear(RoadAhead known) {
    second++;
    Optional<TripEvent> event = told.hear(second * 1_000_000, METRES_A_SECOND, known);
    told.moved(METRES_A_SECOND);
    return event;
  }

  private Optional<TripEvent> within20Seconds(RoadAhead known) {
    Optional<TripEvent> event = Optional.empty();
    for (int i = 0; i < 20 && event.isEmpty(); i++) {
      event = hear(known);
    }
    return event;
  }

  private static RoadAhead graded(double grade, double error) {
    double[] grades = new double[100];
    double[] errors = new double[100];
    Arrays.fill(grades, grade);
    Arrays.fill(errors, error);
    return new RoadAhead.Known(new GradeProfile(PIECE, grades, errors), List.of());
  }

  private static GradeProfile certain(RoadAhead ahead) {
    return ((RoadAhead.Known) ahead).certain();
  }

  private static RoadAhead forked(double odds) {
    GradeProfile way = certain(road(0, 20));
    return new RoadAhead.Known(
        way, List.of(new RoadAhead.Branch(odds, way), new RoadAhead.Branch(0.3, way)));
  }

  /** A road whose grade changes every kilometre, from so many metres on. */
  private static RoadAhead road(double from, int pieces) {
    double[] grades = new double[pieces];
    double[] errors = new double[pieces];
    Arrays.setAll(grades, piece -> 0.04 * Math.sin((from + piece * PIECE) / 1000));
    Arrays.fill(errors, 0.002);
    return new RoadAhead.Known(new GradeProfile(PIECE, grades, errors), List.of());
  }
}
