package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;

/** Heights ahead; expected values are grade times metres, by hand. */
class SlopeTest {
  private static final double PIECE = 50;

  private static GradeProfile profile(int pieces, double grade) {
    double[] grades = new double[pieces];
    double[] errors = new double[pieces];
    Arrays.fill(grades, grade);
    Arrays.fill(errors, 0.002);
    return new GradeProfile(PIECE, grades, errors);
  }

  private static Slope certain(int pieces, double grade) {
    return Slope.of(profile(pieces, grade));
  }

  @Test
  void aKnownGradeGainsItsHeightAlsoBetweenTwoPieces() {
    Slope slope = certain(20, 0.06);
    assertThat(slope.metresUp(1000, 0, 0)).isCloseTo(60, within(1e-9));
    assertThat(slope.metresUp(75, 0, 0)).isCloseTo(4.5, within(1e-9));
    assertThat(slope.metresUp(0, 0, 0)).isZero();
  }

  @Test
  void aWayGoesOnIntoItsBranch() {
    var road = new RoadAhead.Known(profile(10, 0.06), List.of());
    var branch = new RoadAhead.Branch(0.5, profile(10, -0.04));
    assertThat(Slope.of(road, branch).metresUp(750, 0, 0)).isCloseTo(30 - 10, within(1e-9));
  }

  /** Nobody knows what comes, but a climb seldom stops where the knowledge of it does. */
  @Test
  void whereKnowledgeEndsTheGradeDiesAway() {
    Slope slope = certain(20, 0.06);
    double soonAfter = slope.metresUp(1300, 0, 0) - slope.metresUp(1000, 0, 0);
    double muchLater = slope.metresUp(9300, 0, 0) - slope.metresUp(9000, 0, 0);
    assertThat(soonAfter).isBetween(0.8 * 18, 18.0);
    assertThat(muchLater).isBetween(0.0, 0.2);
  }

  @Test
  void theUnknownDiffersFromDrawToDrawAndTheKnownBarely() {
    Slope slope = certain(20, 0);
    assertThat(slope.metresUp(1000, 0, 1)).isZero();
    assertThat(slope.metresUp(1000, 1, 0)).isBetween(0.5, 2.0);
    assertThat(slope.metresUp(5000, 0, 1)).isGreaterThan(40);
    assertThat(slope.metresUp(5000, 0, -1)).isLessThan(-40);
  }

  @Test
  void aRoadOfNoLengthIsLevelInTheMiddle() {
    Slope nothing = Slope.of(GradeProfile.none(PIECE));
    assertThat(nothing.metresUp(2000, 1, 0)).isZero();
    assertThat(nothing.knownMetres()).isZero();
  }
}
