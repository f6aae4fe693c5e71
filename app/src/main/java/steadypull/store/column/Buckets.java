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

  /** Into so many parts a span is divided to tell when its first and last value came. */
  static final int PARTS = 256;

  private static final long NARROWEST_MICROS = 15_625;

  /** A span is 2^exponent seconds wide. */
  final int exponent;

  /** Number of each span: its start divided by the width. */
  final long[] spans;

  /** The part of its span in which the first value came. */
  final long[] firstParts;

  final long[] lastParts;
  final double[] firsts;
  final double[] lasts;
  final double[] leasts;
  final double[] greatests;

  Buckets(int exponent, int size) {
    this.exponent = exponent;
    this.spans = new long[size];
    this.firstParts = new long[size];
    this.lastParts = new long[size];
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

  static long widthMicros(int exponent) {
    return NARROWEST_MICROS << (exponent - LEAST_EXPONENT);
  }

  int size() {
    return spans.length;
  }

  long widthMicros() {
    return widthMicros(exponent);
  }

  long startMicros(int bucket) {
    return spans[bucket] * widthMicros();
  }

  /** When the first value came, up to a part of the width early. */
  long firstMicros(int bucket) {
    return startMicros(bucket) + firstParts[bucket] * (widthMicros() / PARTS);
  }

  /** When the last value came, up to a part of the width early. */
  long lastMicros(int bucket) {
    return startMicros(bucket) + lastParts[bucket] * (widthMicros() / PARTS);
  }

  int part(long timeMicros, int bucket) {
    long parts = (timeMicros - startMicros(bucket)) / Math.max(1, widthMicros() / PARTS);
    return Math.clamp(parts, 0, PARTS - 1);
  }

  /** About the room they take in memory. */
  int octets() {
    return 7 * Long.BYTES * size();
  }
}
