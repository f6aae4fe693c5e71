package steadypull.store.column;

/**
 * Puts buckets and samples of one channel on columns of pixels. What follows one another on the
 * same column is put there at once; values are finite, so that comparing does for the least and the
 * greatest, which takes half as long as {@link Math#min}.
 */
final class LineDrawing {
  private final PixelWindow window;
  private final PixelLine line;

  /** The column that was drawn on last, and its moments: dividing takes longer than comparing. */
  private int column;

  private long columnFromMicros = Long.MIN_VALUE;
  private long columnToMicros = Long.MIN_VALUE;

  LineDrawing(PixelWindow window, PixelLine line) {
    this.window = window;
    this.line = line;
  }

  /** Whether there are samples in the window that buckets alone do not put on their columns. */
  boolean needsSamples(Buckets buckets) {
    return buckets.size() > 0 && (!window.columnsSpan(buckets.widthMicros()) || isCut(buckets));
  }

  /** Draws a segment from its buckets alone. */
  void draw(Buckets buckets) {
    if (window.columnsSpan(buckets.widthMicros())) {
      buckets(buckets);
    }
  }

  /** Draws a segment from its samples, and from its buckets where a column of pixels spans them. */
  void draw(Buckets buckets, Column samples) {
    if (window.columnsSpan(buckets.widthMicros())) {
      buckets(buckets);
      cut(samples, buckets.widthMicros());
    } else {
      samples(samples, window.fromMicros(), window.toMicros());
    }
  }

  /**
   * Draws between which values the line of a segment lies, from its buckets alone: exact where a
   * column of pixels spans a bucket that lies in the window whole.
   */
  void drawBounds(Buckets buckets) {
    long width = buckets.widthMicros();
    long first = Math.floorDiv(window.fromMicros(), width);
    long last = Math.floorDiv(window.toMicros() - 1, width);
    if (!window.columnsSpan(width)) {
      bounds(buckets, first, last);
      return;
    }
    buckets(buckets);
    if (first * width < window.fromMicros()) {
      bounds(buckets, first, first);
    }
    if ((last + 1) * width > window.toMicros()) {
      bounds(buckets, last, last);
    }
  }

  private void bounds(Buckets buckets, long firstSpan, long lastSpan) {
    int end = buckets.countBefore(lastSpan + 1);
    for (int i = buckets.countBefore(firstSpan); i < end; i++) {
      bounds(buckets, i);
    }
  }

  /** On all columns from the first sample to the last; where they lie is known to a sixteenth. */
  private void bounds(Buckets buckets, int i) {
    long end = buckets.startMicros(i) + buckets.widthMicros() - 1;
    long late = Math.min(end, buckets.lastMicros[i] + buckets.widthMicros() / 16);
    long fromMicros = Math.max(window.fromMicros(), buckets.firstMicros[i]);
    long toMicros = Math.min(window.toMicros() - 1, late);
    if (fromMicros > toMicros) {
      return;
    }
    int lastColumn = window.column(toMicros);
    for (int each = window.column(fromMicros); each <= lastColumn; each++) {
      line.addBounds(each, fromMicros, toMicros, buckets.leasts[i], buckets.greatests[i]);
    }
  }

  private boolean isCut(Buckets buckets) {
    return isCut(buckets, window.fromMicros()) || isCut(buckets, window.toMicros());
  }

  /** Whether there is a bucket with that moment inside it. */
  private static boolean isCut(Buckets buckets, long timeMicros) {
    return Math.floorMod(timeMicros, buckets.widthMicros()) != 0
        && buckets.has(Math.floorDiv(timeMicros, buckets.widthMicros()));
  }

  /** Draws the buckets that lie in the window whole. */
  private void buckets(Buckets buckets) {
    int end = buckets.countBefore(Math.floorDiv(window.toMicros(), buckets.widthMicros()));
    int next = buckets.countBefore(Math.ceilDiv(window.fromMicros(), buckets.widthMicros()));
    while (next < end) {
      int column = column(buckets.firstMicros[next]);
      int after = next;
      while (after < end && buckets.lastMicros[after] < columnToMicros) {
        after++;
      }
      if (after == next) {
        bucket(buckets, next++, column);
      } else {
        run(column, buckets, next, after);
        next = after;
      }
    }
  }

  /** Draws buckets that lie on one column whole. */
  private void run(int column, Buckets buckets, int from, int to) {
    double least = buckets.leasts[from];
    double greatest = buckets.greatests[from];
    for (int i = from + 1; i < to; i++) {
      if (buckets.leasts[i] < least) {
        least = buckets.leasts[i];
      }
      if (buckets.greatests[i] > greatest) {
        greatest = buckets.greatests[i];
      }
    }
    line.add(
        column,
        buckets.firstMicros[from],
        buckets.firsts[from],
        buckets.lastMicros[to - 1],
        buckets.lasts[to - 1],
        least,
        greatest);
  }

  /** Draws the samples of the buckets that the window cuts. */
  private void cut(Column samples, long bucketMicros) {
    long wholeFrom = Math.ceilDiv(window.fromMicros(), bucketMicros) * bucketMicros;
    long wholeTo = Math.floorDiv(window.toMicros(), bucketMicros) * bucketMicros;
    samples(samples, window.fromMicros(), wholeFrom);
    samples(samples, wholeTo, window.toMicros());
  }

  /** Draws the samples of a span of time in the window, those of a column of pixels at once. */
  private void samples(Column samples, long fromMicros, long toMicros) {
    int end = samples.countBefore(toMicros);
    for (int first = samples.countBefore(fromMicros); first < end; ) {
      first = run(samples, first, end);
    }
  }

  /** Draws the samples from one on that lie on the same column, and says where the next one is. */
  private int run(Column samples, int first, int end) {
    int column = column(samples.timeMicros(first));
    long toMicros = columnToMicros;
    double least = samples.value(first);
    double greatest = least;
    int next = first + 1;
    for (; next < end && samples.timeMicros(next) < toMicros; next++) {
      double value = samples.value(next);
      if (value < least) {
        least = value;
      } else if (value > greatest) {
        greatest = value;
      }
    }
    line.add(
        column,
        samples.timeMicros(first),
        samples.value(first),
        samples.timeMicros(next - 1),
        samples.value(next - 1),
        least,
        greatest);
    return next;
  }

  /** A bucket lies on two columns at most; on which of them its extremes lie is not known then. */
  private void bucket(Buckets buckets, int i, int first) {
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
