package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The 80 % bands over four trips of the demo season: other vehicles, roads and a link of its own
 * pace than the invented worlds on which they were begun. SeasonBandsBenchTest prints all of it.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Execution(ExecutionMode.CONCURRENT)
class SeasonBandsTest {
  /** Cool and hot days, three roads, four vehicles, one with a gap in its link. */
  private static final List<String> TRIPS =
      List.of("2026-03-18", "2026-05-18", "2026-06-26T15", "2026-07-08");

  private final SeasonBands bands = new SeasonBands();

  @BeforeAll
  void drive() throws Exception {
    for (String trip : TRIPS) {
      bands.drive(trip);
    }
  }

  // Heavy tails: a load that leaves is far outside of any band, so twice the width still misses.
  @Test
  void theBandHoldsFourTimesInFiveAndNeitherHalfNorTwiceOfItWould() {
    SeasonBands.Count all = bands.of("");
    assertThat(all.share(0)).as(bands.toString()).isBetween(0.75, 0.85);
    assertThat(all.share(1)).as("half as wide").isLessThan(0.68);
    assertThat(all.share(2)).as("twice as wide").isGreaterThan(0.88);
  }

  @ParameterizedTest
  @ValueSource(ints = {30, 60, 120, 300})
  void noHorizonIsFarFromIt(int horizon) {
    assertThat(bands.at(horizon).share(0)).as(bands.toString()).isBetween(0.70, 0.90);
  }
}
