package steadypull.drive;

/**
 * When a drive is over, on its link's clock. Immutable.
 *
 * @param openedNanos when its source was opened
 * @param end when it ends by itself
 * @param lastsNanos how long the source has something to tell; the greatest number if for ever
 */
record DriveSpan(long openedNanos, DriveEnd end, long lastsNanos) {

  /** Whether a drive whose trip began at one moment is over at another. */
  boolean isOver(long startNanos, long nanoTime) {
    return nanoTime - openedNanos >= nanosToEnd(startNanos);
  }

  /** The last moment of a drive that is over. */
  long endNanos(long startNanos) {
    return openedNanos + nanosToEnd(startNanos);
  }

  /** Nanoseconds from the opening of the source to the end of the drive. */
  private long nanosToEnd(long startNanos) {
    long afterMicros = end.afterMicros();
    long byLength =
        afterMicros == Long.MAX_VALUE
            ? Long.MAX_VALUE
            : startNanos - openedNanos + afterMicros * 1000;
    return Math.min(byLength, lastsNanos);
  }
}
