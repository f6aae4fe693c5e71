package steadypull.store.column;

import java.util.Optional;

/**
 * Values written with a fixed number of decimal places, as tables have them: {@code value = integer
 * / 10^places}, rounded once, which is what reading the text gives.
 *
 * @param places 1 to 9
 */
record Decimal(int places) implements ValueForm {
  static final int NUMBER = 1;

  private static final int MOST_PLACES = 9;
  private static final double[] POWERS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};
  private static final double GREATEST = 0x1p53;

  static Decimal read(ByteReader in) throws DamagedSegmentException {
    return new Decimal(in.count(MOST_PLACES, "decimal places"));
  }

  /** The least number of places that all values have, if there is one. */
  static Optional<Decimal> of(double[] values, int count) {
    int places = 1;
    for (int i = 0; i < count; i++) {
      while (!fits(values[i], places)) {
        if (++places > MOST_PLACES) {
          return Optional.empty();
        }
      }
    }
    // What fewer places hold, more places hold too, except for numbers that become too great.
    for (int i = 0; i < count; i++) {
      if (!fits(values[i], places)) {
        return Optional.empty();
      }
    }
    return Optional.of(new Decimal(places));
  }

  private static boolean fits(double value, int places) {
    double scaled = Math.rint(value * POWERS[places]);
    long integer = (long) scaled;
    return Math.abs(scaled) <= GREATEST && OrderedBits.same(integer / POWERS[places], value);
  }

  @Override
  public long[] integers(double[] values, int count) {
    long[] integers = new long[count];
    for (int i = 0; i < count; i++) {
      integers[i] = (long) Math.rint(values[i] * POWERS[places]);
    }
    return integers;
  }

  @Override
  public void values(long[] integers, double[] values) {
    for (int i = 0; i < values.length; i++) {
      values[i] = integers[i] / POWERS[places];
    }
  }

  @Override
  public void write(SeriesWriter out) {
    out.body().octet(NUMBER);
    out.body().unsigned(places);
  }
}
