package steadypull.store.column;

/** The values of one column: the form they have, and the integers of that form. */
final class ValueSeries {
  private ValueSeries() {}

  static void write(SeriesWriter out, double[] values, int count) {
    ValueForm form = FormSearch.of(values, count, out);
    form.write(out);
    out.series(form.integers(values, count), count);
  }

  static double[] read(SeriesReader in, int count) throws DamagedSegmentException {
    ValueForm form = ValueForm.read(in, count);
    double[] values = new double[count];
    form.values(in.series(count), values);
    requireFinite(values);
    return values;
  }

  static void requireFinite(double[] values) throws DamagedSegmentException {
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new DamagedSegmentException("finite values", String.valueOf(value));
      }
    }
  }
}
