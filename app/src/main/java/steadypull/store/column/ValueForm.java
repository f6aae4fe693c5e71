package steadypull.store.column;

/**
 * How the values of a column come from integers, and back, bit for bit. Greater integers are
 * greater values, in every form.
 *
 * <pre>
 * number    1 octet    then
 * 0 {@link Dyadic}     shift: unsigned
 * 1 {@link Decimal}    places: unsigned
 * 2 {@link Affine}     scale and offset: 8 octets each
 * 3 {@link Dictionary} how many: unsigned; the distinct values: series of {@link OrderedBits}
 * 4 {@link PlainBits}  nothing
 * 5 {@link Grid}       step and offset: 8 octets each; bits: 1 octet
 * </pre>
 *
 * Eight octets are an IEEE 754 binary64, little-endian.
 */
sealed interface ValueForm permits Dyadic, Decimal, Affine, Dictionary, PlainBits, Grid {
  /** Integers for values that are known to have this form. */
  long[] integers(double[] values, int count);

  /**
   * Fills in the values of integers. Of integers that no value has, something infinite may come.
   *
   * @param values as many as integers
   * @throws DamagedSegmentException where nothing can come of them
   */
  void values(long[] integers, double[] values) throws DamagedSegmentException;

  /** Writes everything but the integers, the form's number first. */
  void write(SeriesWriter out);

  /** Reads what {@link #write} wrote for so many values. */
  static ValueForm read(SeriesReader in, int count) throws DamagedSegmentException {
    int number = in.body().octet();
    return switch (number) {
      case Dyadic.NUMBER -> Dyadic.read(in.body());
      case Decimal.NUMBER -> Decimal.read(in.body());
      case Affine.NUMBER -> Affine.read(in.body());
      case Dictionary.NUMBER -> Dictionary.read(in, count);
      case PlainBits.NUMBER -> new PlainBits();
      case Grid.NUMBER -> Grid.read(in.body());
      default -> throw new DamagedSegmentException("a form of values, 0 to 5", "" + number);
    };
  }
}
