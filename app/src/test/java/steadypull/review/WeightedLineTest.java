package steadypull.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** A straight line against certified figures. */
class WeightedLineTest {
  /** NIST Statistical Reference Datasets, linear regression, Norris: y, then x (from memory). */
  private static final double[][] NORRIS = {
    {0.1, 0.2}, {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1}, {228.1, 226.5},
    {668.5, 666.3}, {998.5, 996.3}, {449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4},
    {0.1, 0.6}, {778.1, 775.5}, {668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6},
    {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8}, {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3},
    {0.6, 0.3}, {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2}, {998.5, 999.0}, {778.9, 779.0},
    {10.2, 11.1}, {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9}, {0.2, 0.5}
  };

  private static double[] column(int column) {
    return Arrays.stream(NORRIS).mapToDouble(row -> row[column]).toArray();
  }

  @Test
  void itAgreesWithTheCertifiedSlopeInterceptAndDeviation() {
    double[] even = new double[NORRIS.length];
    Arrays.fill(even, 1);

    WeightedLine line = WeightedLine.through(column(1), column(0), even);

    assertThat(line.slope()).isCloseTo(1.00211681802045, within(1e-11));
    assertThat(line.height() - line.slope() * line.middle())
        .isCloseTo(-0.262323073774029, within(1e-9));
    double residual = Math.sqrt(line.squares() / (NORRIS.length - 2));
    assertThat(residual).isCloseTo(0.884796396144373, within(1e-9));
    assertThat(residual * line.slopeDeviation()).isCloseTo(0.429796848199937E-03, within(1e-12));
  }

  /** Who stands there three times counts three times. */
  @Test
  void aWeightOfThreeIsThreePoints() {
    WeightedLine weighted =
        WeightedLine.through(
            new double[] {0, 1, 2}, new double[] {0, 2, 1}, new double[] {1, 3, 1});
    WeightedLine repeated =
        WeightedLine.through(
            new double[] {0, 1, 1, 1, 2},
            new double[] {0, 2, 2, 2, 1},
            new double[] {1, 1, 1, 1, 1});

    assertThat(weighted).isEqualTo(repeated);
  }
}
