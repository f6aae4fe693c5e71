package steadypull.backtest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Some of the hundred vehicles of {@link CloggingSeasonBenchTest}, in every build. */
@Execution(ExecutionMode.CONCURRENT)
class CloggingSeasonTest {
  private static final int FIRST = 41;
  private static final int VEHICLES = 6;

  private static long news(double closed) {
    return IntStream.range(FIRST, FIRST + VEHICLES)
        .filter(number -> CloggingSeason.isNews(number, CloggingSeason.USUAL_WIND, closed))
        .count();
  }

  @Test
  void radiatorsThatLoseThreeTenthsAreMostlyFoundAndThoseThatLoseNothingAreLeftAlone() {
    assertThat(news(CloggingSeason.SEVEN_TENTHS_LEFT)).isGreaterThanOrEqualTo(5);
    assertThat(news(0)).isZero();
  }
}
