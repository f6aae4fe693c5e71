package steadypull.compare;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import steadypull.channel.Channel;

/**
 * A run second by second, on a clock that is zero at the onset of its load. Immutable.
 *
 * @param firstSecond second of the first row, zero or below: what came before the onset
 * @param seconds how many rows, one a second, oldest first
 * @param columns a value for every row in the channel's unit, NaN where nothing fresh was heard
 */
public record RunSeries(int firstSecond, int seconds, Map<Channel, double[]> columns) {
  public RunSeries {
    if (firstSecond > 0 || seconds < 1) {
      throw new IllegalArgumentException(
          "A run begins at its onset or before and lasts, found %d and %d s"
              .formatted(firstSecond, seconds));
    }
    Map<Channel, double[]> copied = new LinkedHashMap<>();
    for (Map.Entry<Channel, double[]> column : columns.entrySet()) {
      if (column.getValue().length != seconds) {
        throw new IllegalArgumentException(
            "%s has a value for each of %d s, found %d"
                .formatted(column.getKey().id(), seconds, column.getValue().length));
      }
      copied.put(column.getKey(), column.getValue().clone());
    }
    columns = Map.copyOf(copied);
  }

  /** The channels that were heard. */
  public Set<Channel> channels() {
    return columns.keySet();
  }

  /** The second after the last row. */
  public int endSecond() {
    return firstSecond + seconds;
  }

  /** The value at a second since the onset; empty outside the run or where nothing was heard. */
  public OptionalDouble at(Channel channel, int second) {
    double[] column = columns.get(channel);
    int row = second - firstSecond;
    if (column == null || row < 0 || row >= seconds || Double.isNaN(column[row])) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(column[row]);
  }

  /** A channel's values from a second to before another, NaN where nothing was heard. */
  public double[] span(Channel channel, int from, int to) {
    double[] span = new double[Math.max(0, to - from)];
    Arrays.setAll(span, i -> at(channel, from + i).orElse(Double.NaN));
    return span;
  }
}
