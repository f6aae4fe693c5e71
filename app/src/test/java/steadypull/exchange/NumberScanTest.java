package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NumberScanTest {
  private final NumberScan scan = new NumberScan();

  // Judged by the language's own parser, which rounds correctly (Java SE 25, Double.valueOf), and
  // by
  // exact decimal arithmetic.
  @Test
  void numbersAreReadAsExactlyAsTheLanguageReadsThem() {
    SplittableRandom random = new SplittableRandom(5);
    for (int round = 0; round < 200_000; round++) {
      String text = anyNumber(random);

      assertThat(scan.accepts(text)).as(text).isTrue();
      assertThat(scan.value()).as(text).isEqualTo(Double.parseDouble(text));
    }
  }

  @Test
  void scaledNumbersAreRoundedToTheNearest() {
    SplittableRandom random = new SplittableRandom(6);
    for (int round = 0; round < 50_000; round++) {
      String text =
          BigDecimal.valueOf(random.nextLong(0, 1L << 45), random.nextInt(0, 12)).toString();

      assertThat(scan.accepts(text)).as(text).isTrue();
      assertThat(scan.scaled(3))
          .as(text)
          .isEqualTo(
              new BigDecimal(text)
                  .movePointRight(3)
                  .setScale(0, RoundingMode.HALF_EVEN)
                  .longValueExact());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        ".",
        "-",
        "+",
        "1e",
        "1e+",
        "e5",
        "1e12345",
        "0x1",
        "1f",
        "1d",
        "NaN",
        "Infinity",
        "1 2",
        "1_0",
        "--1",
        "1.2.3",
        "\u0661",
        "1,5",
        "=1",
        "+-1",
        "1e5.0"
      })
  void everythingElseIsNoNumber(String text) {
    assertThat(scan.accepts(text)).isFalse();
  }

  private static String anyNumber(SplittableRandom random) {
    StringBuilder text = new StringBuilder(random.nextInt(3) == 0 ? "-" : "");
    text.append(digits(random, random.nextInt(1, 20)));
    if (random.nextBoolean()) {
      text.append('.').append(digits(random, random.nextInt(0, 20)));
    }
    if (random.nextInt(4) == 0) {
      text.append("eE".charAt(random.nextInt(2))).append(random.nextInt(-340, 340));
    }
    return text.toString();
  }

  private static String digits(SplittableRandom random, int count) {
    StringBuilder digits = new StringBuilder();
    while (digits.length() < count) {
      digits.append(random.nextBoolean() ? 0 : random.nextInt(10));
    }
    return digits.toString();
  }
}
