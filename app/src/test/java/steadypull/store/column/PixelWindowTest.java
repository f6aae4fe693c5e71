package steadypull.store.column;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Columns of pixels against whole numbers without an end. */
class PixelWindowTest {
  @Test
  void aMomentLiesOnTheColumnThatItsShareOfTheWindowSays() {
    SplittableRandom random = new SplittableRandom(4);
    for (int round = 0; round < 20_000; round++) {
      long width = 1 + random.nextLong(1L << (1 + random.nextInt(50)));
      long from = random.nextLong(-1000, 1L << 40);
      int columns = 1 + random.nextInt(4000);
      PixelWindow window = new PixelWindow(from, from + width, columns);
      long time = from + random.nextLong(width);

      int column = window.column(time);
      assertThat(column).as("round " + round).isEqualTo(share(time - from, columns, width));
      assertThat(window.isExact()).isTrue();
      assertThat(time).isGreaterThanOrEqualTo(window.startMicros(column));
      assertThat(time).isLessThan(window.startMicros(column + 1));
    }
  }

  @Test
  void theWidestWindowStillHasItsMomentsOnItsColumns() {
    PixelWindow window = new PixelWindow(0, Long.MAX_VALUE, 1280);

    assertThat(window.isExact()).isFalse();
    assertThat(window.column(0)).isZero();
    assertThat(window.column(Long.MAX_VALUE / 2)).isBetween(639, 640);
    assertThat(window.column(Long.MAX_VALUE - 1)).isEqualTo(1279);
  }

  private static int share(long since, int columns, long width) {
    return BigInteger.valueOf(since)
        .multiply(BigInteger.valueOf(columns))
        .divide(BigInteger.valueOf(width))
        .intValueExact();
  }
}
