package steadypull.store.column;

/**
 * How the values of a column come from integers, and back, bit for bit. Greater integers are
 * greater values, in every form.
 */
sealed interface ValueForm permits Dyadic, Decimal, Affine, Dictionary, PlainBits {
  /** Integers for values that are known to have this form. */
  long[] integers(double[] values, int count);

  /** Values for integers; what no value has may come out as infinite or not a number. */
  double[] values(long[] integers) throws DamagedSegmentException;

  /** Writes everything but the integers, the form's number first. */
  void write(ByteWriter out, Deflation deflation);

  /** Reads what {@link #write} wrote. */
  static ValueForm read(ByteReader in, Inflation inflation) throws DamagedSegmentException {
    int number = in.octet();
    return switch (number) {
      case Dyadic.NUMBER -> Dyadic.read(in);
      case Decimal.NUMBER -> Decimal.read(in);
      case Affine.NUMBER -> Affine.read(in);
      case Dictionary.NUMBER -> Dictionary.read(in, inflation);
      case PlainBits.NUMBER -> new PlainBits();
      default -> throw new DamagedSegmentException("a form of values, 0 to 4", "" + number);
    };
  }
}
