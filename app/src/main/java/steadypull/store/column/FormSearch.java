package steadypull.store.column;

import java.util.Optional;

/** Finds the form that values have. */
final class FormSearch {
  private FormSearch() {}

  /**
   * The form that the values have by their making, else the shorter of those that hold any.
   *
   * @param out where it will be written; not written to
   */
  static ValueForm of(double[] values, int count, SeriesWriter out) {
    return natural(values, count).orElseGet(() -> shorter(values, count, out));
  }

  private static Optional<ValueForm> natural(double[] values, int count) {
    return Dyadic.of(values, count)
        .<ValueForm>map(form -> form)
        .or(() -> Decimal.of(values, count))
        .or(() -> Affine.of(values, count));
  }

  private static ValueForm shorter(double[] values, int count, SeriesWriter out) {
    ValueForm plain = new PlainBits();
    ValueForm counted = Dictionary.of(values, count);
    return length(counted, values, count, out) < length(plain, values, count, out)
        ? counted
        : plain;
  }

  private static int length(ValueForm form, double[] values, int count, SeriesWriter out) {
    SeriesWriter attempt = out.attempt();
    form.write(attempt);
    attempt.series(form.integers(values, count), count);
    return attempt.size();
  }
}
