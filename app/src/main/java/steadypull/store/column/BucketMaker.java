package steadypull.store.column;

/** Sorts the samples of one channel into buckets. */
final class BucketMaker {
  /** Buckets are wide enough to hold so many samples on average. */
  private static final int LEAST_SAMPLES = 16;

  private final Column samples;
  private final long[] narrowest;

  private BucketMaker(Column samples) {
    this.samples = samples;
    this.narrowest = new long[samples.size()];
    for (int i = 0; i < narrowest.length; i++) {
      narrowest[i] = Buckets.narrowestSpan(samples.timeMicros(i));
    }
  }

  /**
   * Buckets of samples.
   *
   * @param samples times not descending
   */
  static Buckets of(Column samples) {
    if (samples.size() == 0) {
      return new Buckets(0, 0);
    }
    BucketMaker maker = new BucketMaker(samples);
    int exponent = Buckets.LEAST_EXPONENT;
    int spans = maker.spans(exponent);
    while (spans > 1
        && (long) spans * LEAST_SAMPLES > samples.size()
        && exponent < Buckets.GREATEST_EXPONENT) {
      spans = maker.spans(++exponent);
    }
    return maker.fill(new Buckets(exponent, spans));
  }

  private int spans(int exponent) {
    int shift = exponent - Buckets.LEAST_EXPONENT;
    int spans = 1;
    for (int i = 1; i < narrowest.length; i++) {
      if (narrowest[i] >> shift != narrowest[i - 1] >> shift) {
        spans++;
      }
    }
    return spans;
  }

  private Buckets fill(Buckets buckets) {
    int shift = buckets.exponent - Buckets.LEAST_EXPONENT;
    int bucket = -1;
    for (int i = 0; i < narrowest.length; i++) {
      long span = narrowest[i] >> shift;
      if (bucket < 0 || span != buckets.spans[bucket]) {
        begin(buckets, ++bucket, span, i);
      }
      double value = samples.value(i);
      buckets.lastMicros[bucket] = samples.timeMicros(i);
      buckets.lasts[bucket] = value;
      buckets.leasts[bucket] = Math.min(buckets.leasts[bucket], value);
      buckets.greatests[bucket] = Math.max(buckets.greatests[bucket], value);
    }
    return buckets;
  }

  private void begin(Buckets buckets, int bucket, long span, int sample) {
    buckets.spans[bucket] = span;
    buckets.firstMicros[bucket] = samples.timeMicros(sample);
    buckets.firsts[bucket] = samples.value(sample);
    buckets.leasts[bucket] = samples.value(sample);
    buckets.greatests[bucket] = samples.value(sample);
  }
}
