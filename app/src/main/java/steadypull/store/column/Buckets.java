package steadypull.store.column;

/**
 * The samples of one channel by spans of time: of each span that has samples the first, last, least
 * and greatest value (M4: Jugel, Jerzak, Hackenbroich, Markl, "M4: A Visualization-Oriented Time
 * Series Data Aggregation", PVLDB 7(10), 2014, pages 797 to 808). Spans begin at multiples of their
 * width, counted from the start of the trip, and ascend. Not changed once filled.
 */
final class Buckets {
  /** The narrowest span: 2^-6 seconds, the last of whole microseconds. */
  static final int LEAST_EXPONENT = -6;

  static final int GREATEST_EXPONENT = 40;

  private static final long NARROWEST_MICROS = 15_625;

  /** A span is 2^exponent seconds wide. */
  final int exponent;

  /** Number of each span: its start divided by the width. */
  final long[] spans;

  /** When the first value of each came, microseconds. */
  final long[] firstMicros;

  final long[] lastMicros;
  final double[] firsts;
  final double[] lasts;
  final double[] leasts;
  final double[] greatests;

  Buckets(int exponent, int size) {
    this.exponent = exponent;
    this.spans = new long[size];
    this.firstMicros = new long[size];
    this.lastMicros = new long[size];
    this.firsts = new double[size];
    this.lasts = new double[size];
    this.leasts = new double[size];
    this.greatests = new double[size];
  }

  /**
   * The number of the narrowest span that holds a time; shifted right it is that of a wider one.
   */
  static long narrowestSpan(long timeMicros) {
    return Math.floorDiv(timeMicros, NARROWEST_MICROS);
  }

  int size() {
    return spans.length;
  }

  long widthMicros() {
    return NARROWEST_MICROS << (exponent - LEAST_EXPONENT);
  }

  long startMicros(int bucket) {
    return spans[bucket] * widthMicros();
  }

  /** About the room they take in memory. */
  int octets() {
    return 7 * Long.BYTES * size();
  }
}
