package steadypull.store.column;

/**
 * The buckets of one channel in bytes.
 *
 * <pre>
 * width     1 octet    the exponent of two of the width in seconds, plus 6
 * size      unsigned   how many buckets, at least one
 * spans     series     their numbers
 * times                see {@link BucketTimes}
 * form                 of the values as integers, see {@link ValueForm}
 * steps     series     first less last of the bucket before; of the first bucket: first
 * changes   series     last less first
 * depths    series     the lower of first and last, less the least
 * heights   series     the greatest, less the higher of first and last
 * </pre>
 */
final class BucketSeries {
  private BucketSeries() {}

  static void write(SeriesWriter out, Buckets buckets) {
    int size = buckets.size();
    out.body().octet(buckets.exponent - Buckets.LEAST_EXPONENT);
    out.body().unsigned(size);
    out.series(buckets.spans, size);
    BucketTimes.write(out, buckets);
    writeValues(out, buckets);
  }

  private static void writeValues(SeriesWriter out, Buckets buckets) {
    int size = buckets.size();
    ValueForm form = FormSearch.of(all(buckets), 4 * size, out);
    form.write(out);
    long[] firsts = form.integers(buckets.firsts, size);
    long[] lasts = form.integers(buckets.lasts, size);
    long[] depths = form.integers(buckets.leasts, size);
    long[] heights = form.integers(buckets.greatests, size);
    long[] steps = new long[size];
    long[] changes = new long[size];
    long before = 0;
    for (int i = 0; i < size; i++) {
      steps[i] = firsts[i] - before;
      changes[i] = lasts[i] - firsts[i];
      before = lasts[i];
      depths[i] = Math.min(firsts[i], lasts[i]) - depths[i];
      heights[i] -= Math.max(firsts[i], lasts[i]);
    }
    out.series(steps, size);
    out.series(changes, size);
    out.series(depths, size);
    out.series(heights, size);
  }

  private static double[] all(Buckets buckets) {
    int size = buckets.size();
    double[] all = new double[4 * size];
    System.arraycopy(buckets.firsts, 0, all, 0, size);
    System.arraycopy(buckets.lasts, 0, all, size, size);
    System.arraycopy(buckets.leasts, 0, all, 2 * size, size);
    System.arraycopy(buckets.greatests, 0, all, 3 * size, size);
    return all;
  }

  /** Reads at most so many buckets. */
  static Buckets read(SeriesReader in, int most) throws DamagedSegmentException {
    int exponent =
        Buckets.LEAST_EXPONENT
            + in.body().count(Buckets.GREATEST_EXPONENT - Buckets.LEAST_EXPONENT, "as an exponent");
    int size = in.body().count(most, "buckets");
    if (size == 0) {
      throw new DamagedSegmentException("buckets", "none");
    }
    Buckets buckets = new Buckets(exponent, size);
    in.fill(buckets.spans);
    requireAscending(buckets.spans);
    BucketTimes.read(in, buckets);
    readValues(in, buckets);
    return buckets;
  }

  private static void requireAscending(long[] spans) throws DamagedSegmentException {
    for (int i = 1; i < spans.length; i++) {
      if (spans[i] <= spans[i - 1]) {
        throw new DamagedSegmentException("a span after " + spans[i - 1], "span " + spans[i]);
      }
    }
  }

  private static void readValues(SeriesReader in, Buckets buckets) throws DamagedSegmentException {
    int size = buckets.size();
    ValueForm form = ValueForm.read(in, 4 * size);
    long[] steps = in.series(size);
    long[] changes = in.series(size);
    long[] depths = in.series(size);
    long[] heights = in.series(size);
    long before = 0;
    for (int i = 0; i < size; i++) {
      steps[i] += before;
      changes[i] += steps[i];
      before = changes[i];
      depths[i] = Math.min(steps[i], changes[i]) - depths[i];
      heights[i] = Math.max(steps[i], changes[i]) + heights[i];
    }
    form.values(steps, buckets.firsts);
    form.values(changes, buckets.lasts);
    form.values(depths, buckets.leasts);
    form.values(heights, buckets.greatests);
    ValueSeries.requireFinite(buckets.firsts);
    ValueSeries.requireFinite(buckets.lasts);
    ValueSeries.requireFinite(buckets.leasts);
    ValueSeries.requireFinite(buckets.greatests);
  }
}
