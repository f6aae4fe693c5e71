package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/**
 * Whether a comparison tells what a known change did to plants that share no equation with it: 5 L
 * more coolant, 40 % more conductance, both, nothing, in other weather, height, wind and load after
 * than before, with sensors that err. A small sample; {@link ComparisonBenchTest} has the two
 * hundred pairs.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Execution(ExecutionMode.CONCURRENT)
class ComparisonOverPlantsTest {
  private static final int FIRST = 5001;
  private static final int PAIRS = 24;

  private final PairScore score = PairScore.ofChargeCoolant();

  ComparisonOverPlantsTest() {
    for (int number = FIRST; number < FIRST + PAIRS; number++) {
      score.accept(PlantPair.of(number));
    }
  }

  // 24 pairs of 8 figures, of which those of one pair go together: about 60 that count. Fewer than
  // 0.80 of them with p = 0.9 are a chance of 1 in 100.
  @Test
  void nineIntervalsInTenHoldTheTruth() {
    assertThat(score.held()).as(score.table()).isBetween(0.80, 0.99);
  }

  // The check itself must notice intervals that are half as wide.
  @Test
  void intervalsOfHalfTheWidthWouldNotHoldIt() {
    assertThat(score.heldByHalf()).as(score.table()).isLessThan(0.80);
  }

  @Test
  void weatherHeightAndLoadAloneAreNoChange() {
    assertThat(score.lasting(Change.NOTHING)).as(score.table()).isLessThanOrEqualTo(0.17);
  }

  // 5 L only delay: whoever claims that they last has mixed up the two.
  @Test
  void moreCoolantIsSeenButNotTakenForCoolingThatLasts() {
    assertThat(score.lasting(Change.COOLANT)).as(score.table()).isLessThanOrEqualTo(0.17);
    assertThat(score.delaying(Change.COOLANT)).as(score.table()).isGreaterThanOrEqualTo(0.5);
  }

  @Test
  void fortyPercentMoreConductanceIsClaimedToLast() {
    assertThat(score.lasting(Change.RADIATOR)).as(score.table()).isGreaterThanOrEqualTo(0.6);
    assertThat(score.lasting(Change.BOTH)).as(score.table()).isGreaterThanOrEqualTo(0.6);
  }
}
