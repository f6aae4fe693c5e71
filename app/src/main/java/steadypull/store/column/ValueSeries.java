package steadypull.store.column;

import java.util.Optional;

/** The values of one column: the form they have, and the integers of that form. */
final class ValueSeries {
  private ValueSeries() {}

  static void write(ByteWriter out, double[] values, int count, Deflation deflation) {
    Optional<ValueForm> natural = natural(values, count);
    if (natural.isPresent()) {
      write(out, natural.get(), values, count, deflation);
      return;
    }
    ByteWriter plain = new ByteWriter();
    write(plain, new PlainBits(), values, count, deflation);
    ByteWriter counted = new ByteWriter();
    write(counted, Dictionary.of(values, count), values, count, deflation);
    out.append(counted.size() < plain.size() ? counted : plain);
  }

  private static void write(
      ByteWriter out, ValueForm form, double[] values, int count, Deflation deflation) {
    form.write(out, deflation);
    IntegerSeries.write(out, form.integers(values, count), count, deflation);
  }

  static double[] read(ByteReader in, int count, Inflation inflation)
      throws DamagedSegmentException {
    ValueForm form = ValueForm.read(in, inflation);
    double[] values = form.values(IntegerSeries.read(in, count, inflation));
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new DamagedSegmentException("finite values", String.valueOf(value));
      }
    }
    return values;
  }

  /** The form that values have by their making. */
  private static Optional<ValueForm> natural(double[] values, int count) {
    return Dyadic.of(values, count)
        .<ValueForm>map(form -> form)
        .or(() -> Decimal.of(values, count))
        .or(() -> Affine.of(values, count));
  }
}
