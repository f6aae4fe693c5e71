package steadypull.store.column;

import java.util.stream.IntStream;

/**
 * When the first and the last values of buckets came, in bytes. A screen needs that to tell on
 * which of two columns of pixels they lie, for which a sixteenth of the width will do, and to break
 * a line where nothing came for some seconds: beside such silences, and at both ends, times are
 * exact.
 *
 * <pre>
 * began     series     the sixteenth of its span in which the first value came
 * lasted    series     from there to the sixteenth of the last one
 * start     signed     first time of the first bucket less the start of its sixteenth, microseconds
 * end       signed     last time of the last bucket, likewise
 * silences  unsigned   how many buckets come after a silence; if any, then
 * where     series     their places
 * before    series     last times of the buckets before them, likewise
 * after     series     their first times, likewise
 * </pre>
 */
final class BucketTimes {
  private static final int PARTS = 16;

  /** Shorter ones break no line. */
  private static final long SILENCE_MICROS = 4_000_000;

  private BucketTimes() {}

  static void write(SeriesWriter out, Buckets buckets) {
    int size = buckets.size();
    long[] began = new long[size];
    long[] lasted = new long[size];
    for (int i = 0; i < size; i++) {
      began[i] = part(buckets, i, buckets.firstMicros[i]);
      lasted[i] = part(buckets, i, buckets.lastMicros[i]) - began[i];
    }
    out.series(began, size);
    out.series(lasted, size);
    out.body().signed(rest(buckets, 0, buckets.firstMicros[0]));
    out.body().signed(rest(buckets, size - 1, buckets.lastMicros[size - 1]));
    writeSilences(out, buckets);
  }

  private static void writeSilences(SeriesWriter out, Buckets buckets) {
    int[] where =
        IntStream.range(1, buckets.size())
            .filter(i -> buckets.firstMicros[i] - buckets.lastMicros[i - 1] > SILENCE_MICROS)
            .toArray();
    out.body().unsigned(where.length);
    if (where.length > 0) {
      out.series(IntStream.of(where).asLongStream().toArray(), where.length);
      out.series(
          IntStream.of(where)
              .mapToLong(i -> rest(buckets, i - 1, buckets.lastMicros[i - 1]))
              .toArray(),
          where.length);
      out.series(
          IntStream.of(where).mapToLong(i -> rest(buckets, i, buckets.firstMicros[i])).toArray(),
          where.length);
    }
  }

  /** Fills in the times of buckets whose spans are known. */
  static void read(SeriesReader in, Buckets buckets) throws DamagedSegmentException {
    int last = buckets.size() - 1;
    in.fill(buckets.firstMicros);
    in.fill(buckets.lastMicros);
    long partMicros = partMicros(buckets);
    for (int i = 0; i <= last; i++) {
      long began = buckets.startMicros(i) + buckets.firstMicros[i] * partMicros;
      buckets.lastMicros[i] = began + buckets.lastMicros[i] * partMicros;
      buckets.firstMicros[i] = began;
    }
    buckets.firstMicros[0] += in.body().signed();
    buckets.lastMicros[last] += in.body().signed();
    int silences = in.body().count(last, "silences");
    if (silences > 0) {
      readSilences(in, buckets, silences);
    }
    for (int i = 0; i <= last; i++) {
      // The start of a sixteenth may lie before a first time that is exact.
      buckets.lastMicros[i] = Math.max(buckets.firstMicros[i], buckets.lastMicros[i]);
      requireInside(buckets, i);
    }
  }

  private static void readSilences(SeriesReader in, Buckets buckets, int silences)
      throws DamagedSegmentException {
    long[] where = in.series(silences);
    long[] before = in.series(silences);
    long[] after = in.series(silences);
    for (int i = 0; i < silences; i++) {
      if (where[i] < 1 || where[i] >= buckets.size()) {
        throw new DamagedSegmentException("a silence before a bucket", "at " + where[i]);
      }
      buckets.lastMicros[(int) where[i] - 1] += before[i];
      buckets.firstMicros[(int) where[i]] += after[i];
    }
  }

  private static void requireInside(Buckets buckets, int bucket) throws DamagedSegmentException {
    long start = buckets.startMicros(bucket);
    long width = buckets.widthMicros();
    if (Long.compareUnsigned(buckets.firstMicros[bucket] - start, width) >= 0
        || Long.compareUnsigned(buckets.lastMicros[bucket] - start, width) >= 0) {
      throw new DamagedSegmentException(
          "times inside their bucket, " + width + " us from " + start,
          buckets.firstMicros[bucket] + " and " + buckets.lastMicros[bucket]);
    }
  }

  private static long part(Buckets buckets, int bucket, long timeMicros) {
    long parts = (timeMicros - buckets.startMicros(bucket)) / partMicros(buckets);
    return Math.clamp(parts, 0, PARTS - 1);
  }

  private static long partMicros(Buckets buckets, int bucket, long part) {
    return buckets.startMicros(bucket) + part * partMicros(buckets);
  }

  private static long partMicros(Buckets buckets) {
    return buckets.widthMicros() / PARTS;
  }

  private static long rest(Buckets buckets, int bucket, long timeMicros) {
    return timeMicros - partMicros(buckets, bucket, part(buckets, bucket, timeMicros));
  }
}
