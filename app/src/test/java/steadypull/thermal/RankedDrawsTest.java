package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RankedDrawsTest {
  /** Against the library's sort, for every number of draws, equal temperatures among them. */
  @Test
  void everyMomentIsSortedByItselfForAnyNumberOfDraws() {
    Random random = new Random(5);
    for (int count = 1; count <= 40; count++) {
      double[][] draws = draws(random, count);
      double[][] ranks = RankedDraws.of(draws);
      for (int point = 0; point < draws[0].length; point++) {
        assertThat(column(ranks, point))
            .as("%d draws, moment %d", count, point)
            .containsExactly(Arrays.stream(column(draws, point)).sorted().toArray());
      }
    }
  }

  @Test
  void theDrawsThemselvesStayAsTheyAre() {
    double[][] draws = {{3, 1}, {2, 2}};
    RankedDraws.of(draws);
    assertThat(draws).isDeepEqualTo(new double[][] {{3, 1}, {2, 2}});
  }

  private static double[][] draws(Random random, int count) {
    double[][] draws = new double[count][9];
    for (double[] draw : draws) {
      for (int point = 0; point < draw.length; point++) {
        draw[point] = point % 3 == 0 ? random.nextInt(4) : random.nextGaussian();
      }
    }
    return draws;
  }

  private static double[] column(double[][] rows, int point) {
    return Arrays.stream(rows).mapToDouble(row -> row[point]).toArray();
  }
}
