package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;

/** Branches are taken as often as their odds say. */
class RoadChoiceTest {
  private static final int DRAWS = 1000;

  private static GradeProfile piece(double grade) {
    return new GradeProfile(100, new double[] {grade}, new double[] {0.001});
  }

  private static double share(RoadAhead.Known road, double grade) {
    RoadChoice choice = new RoadChoice(road);
    int taken = 0;
    for (int draw = 0; draw < DRAWS; draw++) {
      double normal = new NormalDistribution().inverseCumulativeProbability((draw + 0.5) / DRAWS);
      double up = choice.way(normal).metresUp(200, 0, 0) - choice.way(normal).metresUp(100, 0, 0);
      taken += Math.abs(up - 100 * grade) < 1e-6 ? 1 : 0;
    }
    return (double) taken / DRAWS;
  }

  @Test
  void eachBranchHasItsShareOfTheDrawsAndTheRestGoesWhereNobodyHasBeen() {
    var road =
        new RoadAhead.Known(
            piece(0.01),
            List.of(
                new RoadAhead.Branch(0.6, piece(0.07)), new RoadAhead.Branch(0.3, piece(-0.05))));
    assertThat(share(road, 0.07)).isCloseTo(0.6, within(0.002));
    assertThat(share(road, -0.05)).isCloseTo(0.3, within(0.002));
  }

  @Test
  void withoutBranchesThereIsOneWay() {
    var road = new RoadAhead.Known(piece(0.03), List.of());
    RoadChoice choice = new RoadChoice(road);
    assertThat(choice.way(-3)).isSameAs(choice.way(3));
  }
}
