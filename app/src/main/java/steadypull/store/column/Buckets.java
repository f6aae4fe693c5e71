package steadypull.store.column;

import java.util.Arrays;
import java.util.Optional;
import steadypull.store.column.PixelLine.Beside;

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

  /** How many buckets lie before a span. */
  int countBefore(long span) {
    int place = Arrays.binarySearch(spans, span);
    return place < 0 ? -place - 1 : place;
  }

  /** Whether there is a bucket of that span. */
  boolean has(long span) {
    return Arrays.binarySearch(spans, span) >= 0;
  }

  /** The sample that came first, or empty if there are no buckets. */
  Optional<Beside> first() {
    return size() == 0 ? Optional.empty() : Optional.of(new Beside(firstMicros[0], firsts[0]));
  }

  /** The sample that came last, or empty if there are no buckets. */
  Optional<Beside> last() {
    int last = size() - 1;
    return last < 0 ? Optional.empty() : Optional.of(new Beside(lastMicros[last], lasts[last]));
  }

  /** About the room they take in memory. */
  int octets() {
    return 7 * Long.BYTES * size();
  }
}
