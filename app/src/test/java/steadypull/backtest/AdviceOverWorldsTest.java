package steadypull.backtest;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.review.PlainForecaster;

/**
 * The beginnings of two worlds, each with a derate on its first climb, through the whole pipeline.
 * Bars are generous; the table over many hours is {@link ForecastTableBenchTest}'s.
 */
@Execution(ExecutionMode.CONCURRENT)
class AdviceOverWorldsTest {
  private static final List<Integer> WORLDS = List.of(27, 39);
  private static final Duration LASTS = Duration.ofMinutes(11);

  private static final AdviceScore UNKNOWN = new AdviceScore();
  private static final AdviceScore KNOWN = new AdviceScore();
  private static final AdviceScore LINE = new AdviceScore();

  @BeforeAll
  static void drive() {
    for (int number : WORLDS) {
      TowingWorld world = TowingWorld.of(number, LASTS);
      WorldDrive held = WorldDrive.of(world, WorldDrive.Road.UNKNOWN);
      UNKNOWN.add(held);
      LINE.add(held, PlainForecaster.SHORT_LINE.warnings(AdviceScore.came(held)));
      KNOWN.add(WorldDrive.of(world, WorldDrive.Road.KNOWN));
    }
  }

  @Test
  void onAKnownRoadEveryDerateIsWarnedOfInTimeToEaseOff() {
    assertThat(KNOWN.derates()).isEqualTo(WORLDS.size());
    assertThat(KNOWN.warned()).isEqualTo(WORLDS.size());
    assertThat(KNOWN.lead(0)).isGreaterThan(30);
  }

  @Test
  void aKnownRoadIsWorthMoreThanAModelAlone() {
    assertThat(worst(KNOWN)).isGreaterThan(worst(UNKNOWN) + 20);
  }

  @Test
  void littleIsSaidThatDoesNotComeWhereAStraightLineSaysMuch() {
    assertThat(UNKNOWN.lies()).hasSizeLessThanOrEqualTo(1);
    assertThat(KNOWN.lies()).isEmpty();
    assertThat(LINE.lies()).hasSizeGreaterThan(2);
  }

  private static double worst(AdviceScore score) {
    return score.warned() < score.derates() ? 0 : score.lead(0);
  }
}
