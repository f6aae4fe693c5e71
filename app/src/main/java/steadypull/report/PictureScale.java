package steadypull.report;

import java.util.Arrays;

/**
 * Turns values into heights of one lane of a picture. Immutable.
 *
 * @param top px
 * @param height px
 * @param low value at the lower edge
 * @param high value at the upper edge, above {@code low}
 */
public record PictureScale(double top, double height, double low, double high) {
  private static final double[] STEPS = {0.5, 1, 2, 5, 10, 20, 50, 100, 200};

  /** At most so many lines that a value is read by. */
  private static final int MOST_LINES = 5;

  /** The height of a value; one outside is at the edge. */
  public double y(double value) {
    double share = (Math.clamp(value, low, high) - low) / (high - low);
    return top + height * (1 - share);
  }

  /** Heights of many values; of what is no number, none. */
  public double[] heights(double[] values) {
    return Arrays.stream(values)
        .map(value -> Double.isNaN(value) ? Double.NaN : y(value))
        .toArray();
  }

  /** Distance of the lines by which values are read. */
  public double step() {
    for (double step : STEPS) {
      if ((high - low) / step <= MOST_LINES) {
        return step;
      }
    }
    return STEPS[STEPS.length - 1];
  }

  /** Values of those lines, from the lowest. */
  public double[] lines() {
    double step = step();
    int first = (int) Math.ceil(low / step);
    int last = (int) Math.floor(high / step);
    double[] lines = new double[Math.max(0, last - first + 1)];
    for (int i = 0; i < lines.length; i++) {
      lines[i] = (first + i) * step;
    }
    return lines;
  }
}
