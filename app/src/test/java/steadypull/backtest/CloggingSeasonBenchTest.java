package steadypull.backtest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A hundred vehicles' seasons, for DEVELOPERS.md. */
@Tag("bench")
class CloggingSeasonBenchTest {
  private static final int FIRST = 21;
  private static final int VEHICLES = 100;

  @Test
  void aHundredUnchangedVehiclesAreHardlyAccusedAndAHundredCloggingOnesMostlyFound() {
    assertThat(news(CloggingSeason.USUAL_WIND, 0)).isLessThanOrEqualTo(5);
    assertThat(news(CloggingSeason.USUAL_WIND, CloggingSeason.SEVEN_TENTHS_LEFT))
        .isGreaterThanOrEqualTo(80);
    assertThat(news(CloggingSeason.WHOLE_WIND, 0)).isLessThanOrEqualTo(5);
    news(CloggingSeason.WHOLE_WIND, CloggingSeason.SEVEN_TENTHS_LEFT);
  }

  private static long news(double wind, double closed) {
    long news = count(wind, closed);
    System.out.printf("wind %.1f, closed %.2f: told of %d in 100%n", wind, closed, news);
    return news;
  }

  private static long count(double wind, double closed) {
    return IntStream.range(FIRST, FIRST + VEHICLES)
        .filter(number -> CloggingSeason.isNews(number, wind, closed))
        .count();
  }
}
