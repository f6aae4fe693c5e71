package steadypull.drive;

/** Times and values of the recent past, oldest first. Immutable. */
public final class Trace {
  private final long[] timeMicros;
  private final double[] values;

  /**
   * Takes copies.
   *
   * @param timeMicros microseconds since trip start, not falling
   * @param values as many values, in the channel's unit
   */
  public Trace(long[] timeMicros, double[] values) {
    if (timeMicros.length != values.length) {
      throw new IllegalArgumentException(
          "A trace has a value for every time, found %d times and %d values"
              .formatted(timeMicros.length, values.length));
    }
    this.timeMicros = timeMicros.clone();
    this.values = values.clone();
  }

  /** Number of points. */
  public int size() {
    return values.length;
  }

  /** Microseconds since trip start of a point. */
  public long timeMicros(int point) {
    return timeMicros[point];
  }

  /** Value of a point. */
  public double value(int point) {
    return values[point];
  }
}
