package steadypull.store.column;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds the form that values have. */
final class FormSearch {
  private FormSearch() {}

  /**
   * The form that the values have by their making, else the shortest of those that hold any.
   *
   * @param out where it will be written; not written to
   */
  static ValueForm of(double[] values, int count, SeriesWriter out) {
    return natural(values, count).orElseGet(() -> shortest(values, count, out));
  }

  private static Optional<ValueForm> natural(double[] values, int count) {
    return Dyadic.of(values, count)
        .<ValueForm>map(form -> form)
        .or(() -> Decimal.of(values, count))
        .or(() -> Affine.of(values, count));
  }

  private static ValueForm shortest(double[] values, int count, SeriesWriter out) {
    ValueForm shortest = new PlainBits();
    int least = length(shortest, values, count, out);
    for (ValueForm form : others(values, count)) {
      int length = length(form, values, count, out);
      if (length < least) {
        least = length;
        shortest = form;
      }
    }
    return shortest;
  }

  private static List<ValueForm> others(double[] values, int count) {
    List<ValueForm> others = new ArrayList<>();
    others.add(Dictionary.of(values, count));
    Grid.of(values, count).ifPresent(others::add);
    return others;
  }

  private static int length(ValueForm form, double[] values, int count, SeriesWriter out) {
    SeriesWriter attempt = out.attempt();
    form.write(attempt);
    attempt.series(form.integers(values, count), count);
    return attempt.size();
  }
}
