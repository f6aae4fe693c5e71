package steadypull.store.column;

import java.util.Optional;

/** Finds the form that values have. */
final class FormSearch {
  private FormSearch() {}

  /** The form that the values have by their making, else the shorter of those that hold any. */
  static ValueForm of(double[] values, int count, Deflation deflation) {
    return natural(values, count).orElseGet(() -> shorter(values, count, deflation));
  }

  private static Optional<ValueForm> natural(double[] values, int count) {
    return Dyadic.of(values, count)
        .<ValueForm>map(form -> form)
        .or(() -> Decimal.of(values, count))
        .or(() -> Affine.of(values, count));
  }

  private static ValueForm shorter(double[] values, int count, Deflation deflation) {
    ValueForm plain = new PlainBits();
    ValueForm counted = Dictionary.of(values, count);
    return length(counted, values, count, deflation) < length(plain, values, count, deflation)
        ? counted
        : plain;
  }

  private static int length(ValueForm form, double[] values, int count, Deflation deflation) {
    ByteWriter out = new ByteWriter();
    form.write(out, deflation);
    IntegerSeries.write(out, form.integers(values, count), count, deflation);
    return out.size();
  }
}
