package steadypull.store.column;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.IntStream;
import steadypull.store.column.PixelLine.Beside;

/** The samples of one channel in the order in which they were added. Immutable. */
public final class Column {
  static final Column EMPTY = new Column(new long[0], new double[0]);

  private final long[] times;
  private final double[] values;

  Column(long[] times, double[] values) {
    this.times = times;
    this.values = values;
  }

  /** How many samples there are; none if the channel does not occur. */
  public int size() {
    return values.length;
  }

  /** Microseconds since the start of the trip. */
  public long timeMicros(int index) {
    return times[index];
  }

  /** The value in the channel's unit. */
  public double value(int index) {
    return values[index];
  }

  /** All values; not to be changed. */
  double[] values() {
    return values;
  }

  /** How many samples come before a moment, where times do not descend. */
  int countBefore(long timeMicros) {
    int least = 0;
    int most = times.length;
    while (least < most) {
      int middle = (least + most) >>> 1;
      if (times[middle] < timeMicros) {
        least = middle + 1;
      } else {
        most = middle;
      }
    }
    return least;
  }

  /** The last sample before a moment, where times do not descend. */
  Optional<Beside> lastBefore(long timeMicros) {
    return beside(countBefore(timeMicros) - 1);
  }

  /** The first sample at a moment or after it, where times do not descend. */
  Optional<Beside> firstFrom(long timeMicros) {
    return beside(countBefore(timeMicros));
  }

  private Optional<Beside> beside(int index) {
    return index < 0 || index >= times.length
        ? Optional.empty()
        : Optional.of(new Beside(times[index], values[index]));
  }

  /** The same samples by ascending time; those of equal times stay in their order. */
  Column byTime() {
    for (int i = 1; i < times.length; i++) {
      if (times[i] < times[i - 1]) {
        return sorted();
      }
    }
    return this;
  }

  private Column sorted() {
    int[] order =
        IntStream.range(0, times.length)
            .boxed()
            .sorted(Comparator.comparingLong(i -> times[i]))
            .mapToInt(Integer::intValue)
            .toArray();
    return new Column(
        Arrays.stream(order).mapToLong(i -> times[i]).toArray(),
        Arrays.stream(order).mapToDouble(i -> values[i]).toArray());
  }
}
