package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
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
  private final Map<Change, List<Comparison>> found = new EnumMap<>(Change.class);

  ComparisonOverPlantsTest() {
    for (int number = FIRST; number < FIRST + PAIRS; number++) {
      PlantPair pair = PlantPair.of(number);
      found.computeIfAbsent(pair.change(), _ -> new ArrayList<>()).add(score.accept(pair));
    }
  }

  private double mean(Change change, ToDoubleFunction<Comparison> figure) {
    return found.getOrDefault(change, List.of()).stream()
        .mapToDouble(figure)
        .average()
        .orElseThrow();
  }

  private static double moreJoules(Comparison comparison) {
    return comparison.after().joulesPerKelvin().orElseThrow().middle()
        - comparison.before().joulesPerKelvin().orElseThrow().middle();
  }

  private static double moreConductance(Comparison comparison) {
    return comparison.after().wattsPerKelvin().orElseThrow().middle()
        / comparison.before().wattsPerKelvin().orElseThrow().middle();
  }

  // 5 L of 50/50 coolant by volume at 60 degC are 5.27 kg of 3435 J/(kg K) (ASHRAE handbook data):
  // 18.1 kJ/K. Air flow and sensors of the plants err by 3 %.
  @Test
  void fiveLitresOfCoolantAreWorthEighteenKilojoulesPerKelvin() {
    assertThat(mean(Change.COOLANT, ComparisonOverPlantsTest::moreJoules))
        .isBetween(15_500.0, 20_500.0);
    assertThat(Math.abs(mean(Change.NOTHING, ComparisonOverPlantsTest::moreJoules)))
        .isLessThan(2_000);
  }

  @Test
  void fortyPercentMoreConductanceAreFound() {
    assertThat(mean(Change.RADIATOR, ComparisonOverPlantsTest::moreConductance))
        .isBetween(1.28, 1.55);
    assertThat(mean(Change.COOLANT, ComparisonOverPlantsTest::moreConductance))
        .isBetween(0.85, 1.15);
  }

  // What only delays has faded where the store settles: all of that gain lasts.
  @Test
  void theDelayFadesToNothing() {
    for (Comparison comparison : found.getOrDefault(Change.COOLANT, List.of())) {
      Course delays = comparison.delayingGain();
      double last = delays.middle()[delays.seconds() - 1];
      double most = Arrays.stream(delays.middle()).max().orElseThrow();
      double share = last / Math.max(0.5, most);
      double timesThrough =
          delays.seconds()
              * comparison.before().wattsPerKelvin().orElseThrow().middle()
              / comparison.after().joulesPerKelvin().orElseThrow().middle();
      assertThat(share).as("after %s time constants", timesThrough).isLessThan(1.001);
      if (timesThrough > 3) {
        assertThat(share).isLessThan(0.6);
      }
    }
  }

  // 24 pairs of 8 figures, of which those of one pair go together: about 60 that count. Fewer than
  // 0.80 of them with p = 0.9 are a chance of 1 in 100.
  @Test
  void nineIntervalsInTenHoldTheTruth() {
    assertThat(score.held()).as(score.table()).isBetween(0.80, 0.99);
  }

  @Test
  void theSplitIsRightWithinItsInterval() {
    assertThat(score.shares().get("delays at 120 s")).as(score.table()).isGreaterThan(0.75);
    assertThat(score.shares().get("lasts at 120 s")).as(score.table()).isGreaterThan(0.75);
    assertThat(mean(Change.COOLANT, c -> c.delays().orElseThrow().middle()))
        .isGreaterThan(3 * Math.abs(mean(Change.COOLANT, c -> c.lasts().orElseThrow().middle())));
    assertThat(mean(Change.RADIATOR, c -> c.lasts().orElseThrow().middle()))
        .isGreaterThan(3 * Math.abs(mean(Change.RADIATOR, c -> c.delays().orElseThrow().middle())));
  }

  // The check itself must notice intervals that are half as wide.
  @Test
  void intervalsOfHalfTheWidthWouldNotHoldIt() {
    assertThat(score.heldByHalf()).as(score.table()).isLessThan(0.80);
  }

  // Of six pairs three or more claims that come one time in twenty: a chance of 1 in 400.
  @Test
  void weatherHeightAndLoadAloneAreNoChange() {
    assertThat(score.lasting(Change.NOTHING)).as(score.table()).isLessThan(0.5);
    assertThat(score.delaying(Change.NOTHING)).as(score.table()).isLessThan(0.5);
  }

  // 5 L only delay: whoever claims that they last has mixed up the two.
  @Test
  void moreCoolantIsSeenButNotTakenForCoolingThatLasts() {
    assertThat(score.lasting(Change.COOLANT)).as(score.table()).isLessThan(0.5);
    assertThat(score.delaying(Change.COOLANT)).as(score.table()).isGreaterThanOrEqualTo(0.5);
  }

  @Test
  void fortyPercentMoreConductanceIsClaimedToLast() {
    assertThat(score.lasting(Change.RADIATOR)).as(score.table()).isGreaterThanOrEqualTo(0.6);
    assertThat(score.lasting(Change.BOTH)).as(score.table()).isGreaterThanOrEqualTo(0.6);
  }
}
