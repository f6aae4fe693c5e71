package steadypull.store.column;

import java.util.Optional;

/**
 * What to draw of one channel, for each column of pixels: nothing, or the first, last, least and
 * greatest value in it. A line that goes from least to greatest in each column, and from the last
 * value of one to the first of the next, is the line through every sample. Immutable.
 */
public final class PixelLine {
  private final long[] firstMicros;
  private final long[] lastMicros;
  private final double[] firsts;
  private final double[] lasts;
  private final double[] leasts;
  private final double[] greatests;
  private final boolean[] filled;
  private Optional<Beside> before = Optional.empty();
  private Optional<Beside> after = Optional.empty();

  /** A sample outside the window, to or from which the line goes on. */
  public record Beside(long timeMicros, double value) {}

  PixelLine(int columns) {
    this.firstMicros = new long[columns];
    this.lastMicros = new long[columns];
    this.firsts = new double[columns];
    this.lasts = new double[columns];
    this.leasts = new double[columns];
    this.greatests = new double[columns];
    this.filled = new boolean[columns];
  }

  /** How many columns of pixels there are. */
  public int columns() {
    return filled.length;
  }

  /** True if the channel has no sample there; the other figures mean nothing then. */
  public boolean isEmpty(int column) {
    return !filled[column];
  }

  /** The value that came first. */
  public double first(int column) {
    return firsts[column];
  }

  /** The value that came last. */
  public double last(int column) {
    return lasts[column];
  }

  /** The least value. */
  public double least(int column) {
    return leasts[column];
  }

  /** The greatest value. */
  public double greatest(int column) {
    return greatests[column];
  }

  /**
   * When the first value came, microseconds since the start of the trip; where it was read from an
   * overview up to a sixteenth of a bucket early, but exact beside a silence of more than 4 s.
   */
  public long firstMicros(int column) {
    return firstMicros[column];
  }

  /** When the last value came, as exact as {@link #firstMicros}. */
  public long lastMicros(int column) {
    return lastMicros[column];
  }

  /** The last sample before the window, or empty if the trip has none. */
  public Optional<Beside> before() {
    return before;
  }

  /** The first sample after the window, or empty if the trip has none. */
  public Optional<Beside> after() {
    return after;
  }

  /** True if the line has to be broken before a column: nothing came for longer than that. */
  public boolean isGapBefore(int column, long longestSilenceMicros) {
    if (!filled[column]) {
      return false;
    }
    for (int before = column - 1; before >= 0; before--) {
      if (filled[before]) {
        return firstMicros[column] - lastMicros[before] > longestSilenceMicros;
      }
    }
    return false;
  }

  void lieBetween(Optional<Beside> sampleBefore, Optional<Beside> sampleAfter) {
    this.before = sampleBefore;
    this.after = sampleAfter;
  }

  /** Draws samples of one column of pixels that follow one another, by the four that matter. */
  void add(
      int column,
      long timeOfFirst,
      double first,
      long timeOfLast,
      double last,
      double least,
      double greatest) {
    if (!filled[column]) {
      begin(column, timeOfFirst, first);
    } else if (timeOfFirst < firstMicros[column]) {
      firstMicros[column] = timeOfFirst;
      firsts[column] = first;
    }
    if (timeOfLast >= lastMicros[column]) {
      lastMicros[column] = timeOfLast;
      lasts[column] = last;
    }
    widen(column, least, greatest);
  }

  /** Draws between which values samples lie that may be anywhere on some columns. */
  void addBounds(int column, long fromMicros, long toMicros, double least, double greatest) {
    if (!filled[column]) {
      begin(column, fromMicros, least);
    }
    lastMicros[column] = Math.max(lastMicros[column], toMicros);
    widen(column, least, greatest);
    firsts[column] = leasts[column];
    lasts[column] = greatests[column];
  }

  void addFirst(int column, long timeMicros, double value) {
    if (!filled[column]) {
      begin(column, timeMicros, value);
    } else if (timeMicros < firstMicros[column]) {
      firstMicros[column] = timeMicros;
      firsts[column] = value;
    }
    widen(column, value, value);
  }

  void addLast(int column, long timeMicros, double value) {
    if (!filled[column]) {
      begin(column, timeMicros, value);
    } else if (timeMicros >= lastMicros[column]) {
      lastMicros[column] = timeMicros;
      lasts[column] = value;
    }
    widen(column, value, value);
  }

  /** Widens a column that has a value. */
  void widen(int column, double least, double greatest) {
    if (least < leasts[column]) {
      leasts[column] = least;
    }
    if (greatest > greatests[column]) {
      greatests[column] = greatest;
    }
  }

  private void begin(int column, long timeMicros, double value) {
    filled[column] = true;
    firstMicros[column] = timeMicros;
    lastMicros[column] = timeMicros;
    firsts[column] = value;
    lasts[column] = value;
    leasts[column] = value;
    greatests[column] = value;
  }
}
