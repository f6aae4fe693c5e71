package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SortedColumnTest {
  /** Against the library's sort, where neighbours are alike, equal, or not alike at all. */
  @Test
  void everyColumnIsSortedWhateverTheOneBeforeWas() {
    Random random = new Random(5);
    double[][] draws = new double[32][40];
    for (double[] draw : draws) {
      for (int point = 1; point < draw.length; point++) {
        draw[point] =
            point % 10 == 0 ? random.nextInt(3) : draw[point - 1] + 0.1 * random.nextGaussian();
      }
    }
    SortedColumn column = new SortedColumn(draws);
    for (int point = 0; point < 40; point++) {
      int at = point;
      double[] sorted = Arrays.stream(draws).mapToDouble(draw -> draw[at]).sorted().toArray();
      assertThat(column.at(point)).containsExactly(sorted);
    }
  }
}
