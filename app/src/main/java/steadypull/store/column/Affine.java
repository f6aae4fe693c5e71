package steadypull.store.column;

import java.util.Optional;

/**
 * Values as they are computed from the number on the bus: {@code value = integer * scale + offset},
 * rounded after each operation.
 *
 * @param scale positive
 * @param offset finite
 */
record Affine(double scale, double offset) implements ValueForm {
  static final int NUMBER = 2;

  /**
   * Scales of the parameter table of SAE J1979, appendix B, that neither binary nor decimal
   * fractions cover, and decimal ones for signals of a vehicle's own.
   */
  private static final double[] SCALES = {
    100.0 / 255, 1.0 / 10, 1.0 / 100, 1.0 / 1000, 1.0 / 20, 1.0 / 200, 1.0 / 5, 1.0 / 50, 1e-4
  };

  /** Offsets that go with them: of that table, and kelvin. */
  private static final double[] OFFSETS = {0, -40, -50, -100, -125, -210, -273, -273.15};

  private static final double GREATEST = 0x1p53;

  Affine {
    if (!(scale > 0) || !Double.isFinite(scale) || !Double.isFinite(offset)) {
      throw new IllegalArgumentException(
          "A scale is positive and an offset finite, found %s and %s".formatted(scale, offset));
    }
  }

  static Affine read(ByteReader in) throws DamagedSegmentException {
    double scale = Double.longBitsToDouble(in.littleEndian(Long.BYTES));
    double offset = Double.longBitsToDouble(in.littleEndian(Long.BYTES));
    if (!(scale > 0) || !Double.isFinite(scale) || !Double.isFinite(offset)) {
      throw new DamagedSegmentException(
          "a positive scale and a finite offset", scale + " and " + offset);
    }
    return new Affine(scale, offset);
  }

  /** The first of the usual scales and offsets that all values have. */
  static Optional<Affine> of(double[] values, int count) {
    for (double scale : SCALES) {
      for (double offset : OFFSETS) {
        Affine form = new Affine(scale, offset);
        if (form.fits(values, count)) {
          return Optional.of(form);
        }
      }
    }
    return Optional.empty();
  }

  private boolean fits(double[] values, int count) {
    for (int i = 0; i < count; i++) {
      double rounded = Math.rint((values[i] - offset) / scale);
      long integer = (long) rounded;
      if (!(Math.abs(rounded) <= GREATEST)
          || !OrderedBits.same(integer * scale + offset, values[i])) {
        return false;
      }
    }
    return true;
  }

  @Override
  public long[] integers(double[] values, int count) {
    long[] integers = new long[count];
    for (int i = 0; i < count; i++) {
      integers[i] = (long) Math.rint((values[i] - offset) / scale);
    }
    return integers;
  }

  @Override
  public void values(long[] integers, double[] values) {
    for (int i = 0; i < values.length; i++) {
      values[i] = integers[i] * scale + offset;
    }
  }

  @Override
  public void write(SeriesWriter out) {
    out.body().octet(NUMBER);
    out.body().littleEndian(Double.doubleToRawLongBits(scale), Long.BYTES);
    out.body().littleEndian(Double.doubleToRawLongBits(offset), Long.BYTES);
  }
}
