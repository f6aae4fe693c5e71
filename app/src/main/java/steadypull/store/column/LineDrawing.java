package steadypull.store.column;

/** Puts buckets and samples of one channel on columns of pixels. */
final class LineDrawing {
  private final PixelWindow window;
  private final PixelLine line;

  /** The column that was drawn on last, and its moments: dividing takes longer than comparing. */
  private int column;

  private long columnFromMicros;
  private long columnToMicros;

  LineDrawing(PixelWindow window, PixelLine line) {
    this.window = window;
    this.line = line;
  }

  void samples(Column samples) {
    for (int i = 0; i < samples.size(); i++) {
      sample(samples, i);
    }
  }

  /** Draws the buckets that lie in the window whole; true if the window cuts others. */
  boolean buckets(Buckets buckets) {
    boolean isCut = false;
    long width = buckets.widthMicros();
    for (int i = 0; i < buckets.size(); i++) {
      long start = buckets.startMicros(i);
      if (window.holds(start) && window.holds(start + width - 1)) {
        bucket(buckets, i);
      } else {
        isCut |= start < window.toMicros() && start + width > window.fromMicros();
      }
    }
    return isCut;
  }

  /** Draws the samples of the buckets that the window cuts. */
  void cut(Column samples, long bucketMicros) {
    long wholeFrom = Math.ceilDiv(window.fromMicros(), bucketMicros) * bucketMicros;
    long wholeTo = Math.floorDiv(window.toMicros(), bucketMicros) * bucketMicros;
    for (int i = 0; i < samples.size(); i++) {
      long timeMicros = samples.timeMicros(i);
      if (timeMicros < wholeFrom || timeMicros >= wholeTo) {
        sample(samples, i);
      }
    }
  }

  private void sample(Column samples, int i) {
    long timeMicros = samples.timeMicros(i);
    if (window.holds(timeMicros)) {
      line.add(column(timeMicros), timeMicros, samples.value(i));
    }
  }

  /** A bucket lies on two columns at most; on which of them its extremes lie is not known then. */
  private void bucket(Buckets buckets, int i) {
    int first = column(buckets.firstMicros[i]);
    int last = column(buckets.lastMicros[i]);
    int widened = first == last ? first : middle(buckets, i, first, last);
    line.addFirst(first, buckets.firstMicros[i], buckets.firsts[i]);
    line.addLast(last, buckets.lastMicros[i], buckets.lasts[i]);
    line.widen(widened, buckets.leasts[i], buckets.greatests[i]);
  }

  private int middle(Buckets buckets, int i, int first, int last) {
    int middle = window.column(buckets.startMicros(i) + buckets.widthMicros() / 2);
    return Math.clamp(middle, first, last);
  }

  private int column(long timeMicros) {
    if (timeMicros < columnFromMicros || timeMicros >= columnToMicros) {
      column = window.column(timeMicros);
      if (window.isExact()) {
        columnFromMicros = window.startMicros(column);
        columnToMicros = window.startMicros(column + 1);
      }
    }
    return column;
  }
}
