package steadypull.store.column;

/**
 * A span of time on columns of pixels.
 *
 * @param fromMicros the first moment, microseconds since the start of the trip
 * @param toMicros the first moment after it
 * @param columns at least 1
 */
record PixelWindow(long fromMicros, long toMicros, int columns) {
  PixelWindow {
    if (columns < 1 || toMicros <= fromMicros || toMicros - fromMicros < 0) {
      throw new IllegalArgumentException(
          "A window has columns and ends after it begins, found %d columns from %d to %d us"
              .formatted(columns, fromMicros, toMicros));
    }
  }

  boolean holds(long timeMicros) {
    return timeMicros >= fromMicros && timeMicros < toMicros;
  }

  /** True if a column of pixels is at least that wide. */
  boolean columnsSpan(long micros) {
    return fitsByColumns(micros) && micros * columns <= toMicros - fromMicros;
  }

  /** The column of a moment that the window holds. */
  int column(long timeMicros) {
    long since = timeMicros - fromMicros;
    if (fitsByColumns(since)) {
      return (int) (since * columns / (toMicros - fromMicros));
    }
    return (int) Math.min(columns - 1, since / ((toMicros - fromMicros) / columns));
  }

  /** The first moment of a column, 0 to the number of columns. */
  long startMicros(int column) {
    return fromMicros + Math.ceilDiv(column * (toMicros - fromMicros), columns);
  }

  /** True if {@link #column} and {@link #startMicros} are exact for the whole window. */
  boolean isExact() {
    return fitsByColumns(toMicros - fromMicros);
  }

  private boolean fitsByColumns(long micros) {
    return micros <= Long.MAX_VALUE / columns;
  }
}
