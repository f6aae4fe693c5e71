package steadypull.compare;

import java.util.ArrayList;
import java.util.List;

/**
 * A run's readings, in means of {@value #BIN_SECONDS} s: of one-degree steps neighbouring seconds
 * say nearly the same. Immutable.
 *
 * @param rows first row of each bin
 * @param celsius mean of each
 */
record Readings(List<Integer> rows, List<Double> celsius) {
  static final int BIN_SECONDS = 5;

  Readings {
    rows = List.copyOf(rows);
    celsius = List.copyOf(celsius);
  }

  /** Of what a sensor showed, a value a second, NaN where nothing was heard. */
  static Readings of(double[] shown) {
    List<Integer> rows = new ArrayList<>();
    List<Double> means = new ArrayList<>();
    for (int row = 0; row + BIN_SECONDS <= shown.length; row += BIN_SECONDS) {
      double mean = mean(shown, row);
      if (!Double.isNaN(mean)) {
        rows.add(row);
        means.add(mean);
      }
    }
    return new Readings(rows, means);
  }

  /** The same means of a course of as many seconds. */
  double[] of(int from, double[] course, double[] into) {
    for (int i = 0; i < rows.size(); i++) {
      into[from + i] = mean(course, rows.get(i));
    }
    return into;
  }

  private static double mean(double[] values, int row) {
    double sum = 0;
    for (int i = row; i < row + BIN_SECONDS; i++) {
      sum += values[i];
    }
    return sum / BIN_SECONDS;
  }

  int size() {
    return rows.size();
  }
}
