package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Two hundred pairs of every channel, none of which anything was set on; too long for a build. */
@Tag("bench")
class ComparisonBenchTest {
  private static final int FIRST = 40_001;
  private static final int FIRST_OF_NOTHING = 60_003;
  private static final int PAIRS = 200;

  // A share of 0.9 is met within 0.04 by 200 pairs, 19 times in 20; figures of a pair go together.
  @Test
  void nineIntervalsInTenHoldTheTruth() {
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
      assertThat(score.held()).as(score.table()).isBetween(0.85, 0.97);
      assertThat(score.shares())
          .allSatisfy((_, share) -> assertThat(share).as(score.table()).isBetween(0.85, 0.99));
    }
    assertThat(water.lasting(Change.RADIATOR)).as(water.table()).isGreaterThan(0.8);
    assertThat(water.lasting(Change.COOLANT)).as(water.table()).isLessThan(0.1);
  }

  // Fifty of the pairs above are too few to tell one claim in twenty from one in ten.
  @Test
  void ofNothingAtMostOneClaimInTwenty() {
    PairScore water = PairScore.ofChargeCoolant();
    for (int pair = 0; pair < PAIRS; pair++) {
      water.accept(PlantPair.of(FIRST_OF_NOTHING + 4 * pair, Change.NOTHING));
    }
    System.out.println(water.table());
    assertThat(water.lasting(Change.NOTHING)).as(water.table()).isLessThanOrEqualTo(0.05);
    assertThat(water.delaying(Change.NOTHING)).as(water.table()).isLessThanOrEqualTo(0.05);
  }
}
