package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Two hundred pairs of every channel, none of which anything was set on; too long for a build. */
@Tag("bench")
class ComparisonBenchTest {
  private static final int FIRST = 40_001;
  private static final int PAIRS = 200;

  @Test
  void intervalsHoldTheTruthAndNothingIsClaimedOfNothing() {
    PairScore water = PairScore.ofChargeCoolant();
    PairScore air = PairScore.ofChargeAir();
    PairScore engine = PairScore.ofEngineCoolant();
    for (int number = FIRST; number < FIRST + PAIRS; number++) {
      PlantPair pair = PlantPair.of(number);
      List.of(water, air, engine).forEach(score -> score.accept(pair));
    }
    for (PairScore score : List.of(water, air, engine)) {
      System.out.println(score.table());
    }
    for (PairScore score : List.of(water, air, engine)) {
      assertThat(score.held()).as(score.table()).isBetween(0.85, 0.96);
      assertThat(score.lasting(Change.NOTHING)).as(score.table()).isLessThanOrEqualTo(0.05);
    }
    assertThat(water.shares()).allSatisfy((_, share) -> assertThat(share).isBetween(0.85, 0.96));
  }
}
