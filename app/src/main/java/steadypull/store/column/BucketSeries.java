package steadypull.store.column;

/**
 * The buckets of one channel in bytes.
 *
 * <pre>
 * width     1 octet    the exponent of two of the width in seconds, plus 6
 * size      unsigned   how many buckets, at least one
 * spans     series     their numbers
 * began     series     the part in which the first value came
 * lasted    series     from there to the part of the last one
 * form                 of the values as integers, see {@link ValueForm}
 * steps     series     first less last of the bucket before; of the first bucket: first
 * changes   series     last less first
 * depths    series     the lower of first and last, less the least
 * heights   series     the greatest, less the higher of first and last
 * </pre>
 */
final class BucketSeries {
  private BucketSeries() {}

  static void write(ByteWriter out, Buckets buckets, Deflation deflation) {
    int size = buckets.size();
    long[] lasted = new long[size];
    for (int i = 0; i < size; i++) {
      lasted[i] = buckets.lastParts[i] - buckets.firstParts[i];
    }
    out.octet(buckets.exponent - Buckets.LEAST_EXPONENT);
    out.unsigned(size);
    IntegerSeries.write(out, buckets.spans, size, deflation);
    IntegerSeries.write(out, buckets.firstParts, size, deflation);
    IntegerSeries.write(out, lasted, size, deflation);
    writeValues(out, buckets, deflation);
  }

  private static void writeValues(ByteWriter out, Buckets buckets, Deflation deflation) {
    int size = buckets.size();
    ValueForm form = FormSearch.of(all(buckets), 4 * size, deflation);
    form.write(out, deflation);
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
    IntegerSeries.write(out, steps, size, deflation);
    IntegerSeries.write(out, changes, size, deflation);
    IntegerSeries.write(out, depths, size, deflation);
    IntegerSeries.write(out, heights, size, deflation);
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
  static Buckets read(ByteReader in, int most, Inflation inflation) throws DamagedSegmentException {
    int exponent =
        Buckets.LEAST_EXPONENT
            + in.count(Buckets.GREATEST_EXPONENT - Buckets.LEAST_EXPONENT, "as an exponent");
    int size = in.count(most, "buckets");
    if (size == 0) {
      throw new DamagedSegmentException("buckets", "none");
    }
    Buckets buckets = new Buckets(exponent, size);
    IntegerSeries.read(in, buckets.spans, inflation);
    IntegerSeries.read(in, buckets.firstParts, inflation);
    IntegerSeries.read(in, buckets.lastParts, inflation);
    for (int i = 0; i < size; i++) {
      buckets.lastParts[i] += buckets.firstParts[i];
    }
    requireParts(buckets.firstParts);
    requireParts(buckets.lastParts);
    readValues(in, buckets, inflation);
    return buckets;
  }

  private static void readValues(ByteReader in, Buckets buckets, Inflation inflation)
      throws DamagedSegmentException {
    int size = buckets.size();
    ValueForm form = ValueForm.read(in, 4 * size, inflation);
    long[] steps = IntegerSeries.read(in, new long[size], inflation);
    long[] changes = IntegerSeries.read(in, new long[size], inflation);
    long[] depths = IntegerSeries.read(in, new long[size], inflation);
    long[] heights = IntegerSeries.read(in, new long[size], inflation);
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

  private static void requireParts(long[] parts) throws DamagedSegmentException {
    for (long part : parts) {
      if (part < 0 || part >= Buckets.PARTS) {
        throw new DamagedSegmentException("parts of a span, 0 to 255", "part " + part);
      }
    }
  }
}
