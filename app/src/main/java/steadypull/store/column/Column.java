package steadypull.store.column;

/** The samples of one channel in the order in which they were added. Immutable. */
public final class Column {
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
}
