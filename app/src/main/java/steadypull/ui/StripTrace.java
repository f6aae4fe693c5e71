package steadypull.ui;

/** A line that grows from left to right and is broken where nothing came for long. One use. */
final class StripTrace {
  private static final long LONGEST_SILENCE_MICROS = 15_000_000;

  private final Pen pen;
  private final double[] xs;
  private final double[] ys;
  private int count;
  private long reachedMicros;

  /** A line of at most so many points. */
  StripTrace(Pen pen, int most) {
    this.pen = pen;
    this.xs = new double[most];
    this.ys = new double[most];
  }

  /** Goes on through what came from one moment to another. */
  void add(long fromMicros, long toMicros, double x, double... through) {
    if (count > 0 && fromMicros - reachedMicros > LONGEST_SILENCE_MICROS) {
      finish();
    }
    for (double y : through) {
      xs[count] = x;
      ys[count] = y;
      count++;
    }
    reachedMicros = toMicros;
  }

  /** Draws what there is. */
  void finish() {
    pen.polyline(xs, ys, count);
    count = 0;
  }
}
