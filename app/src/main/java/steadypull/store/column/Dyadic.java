package steadypull.store.column;

import java.util.Optional;

/**
 * Whole numbers, and those that binary fractions make whole: {@code value = integer / 2^shift},
 * exact both ways. Temperatures, speeds, pressures in 1/32 kPa, trims in 100/128 %.
 *
 * @param shift 0 to 20
 */
record Dyadic(int shift) implements ValueForm {
  static final int NUMBER = 0;

  private static final int MOST_SHIFT = 20;

  /** Up to here a double holds every integer. */
  private static final double GREATEST = 0x1p53;

  static Dyadic read(ByteReader in) throws DamagedSegmentException {
    return new Dyadic(in.count(MOST_SHIFT, "binary places"));
  }

  /** The least shift that makes all values whole, if there is one. */
  static Optional<Dyadic> of(double[] values, int count) {
    int shift = 0;
    for (int i = 0; i < count; i++) {
      while (!fits(values[i], shift)) {
        if (++shift > MOST_SHIFT) {
          return Optional.empty();
        }
      }
    }
    return of(values, count, shift);
  }

  private static Optional<Dyadic> of(double[] values, int count, int shift) {
    for (int i = 0; i < count; i++) {
      if (!fits(values[i], shift)) {
        return Optional.empty();
      }
    }
    return Optional.of(new Dyadic(shift));
  }

  private static boolean fits(double value, int shift) {
    double scaled = value * (1L << shift);
    long integer = (long) scaled;
    return Math.abs(scaled) <= GREATEST
        && OrderedBits.same(integer / (double) (1L << shift), value);
  }

  @Override
  public long[] integers(double[] values, int count) {
    long[] integers = new long[count];
    for (int i = 0; i < count; i++) {
      integers[i] = (long) (values[i] * (1L << shift));
    }
    return integers;
  }

  @Override
  public void values(long[] integers, double[] values) {
    double unit = 1.0 / (1L << shift);
    for (int i = 0; i < values.length; i++) {
      values[i] = integers[i] * unit;
    }
  }

  @Override
  public void write(SeriesWriter out) {
    out.body().octet(NUMBER);
    out.body().unsigned(shift);
  }
}
