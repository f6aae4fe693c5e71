package steadypull.store.column;

/** The values of one column: the form they have, and the integers of that form. */
final class ValueSeries {
  private ValueSeries() {}

  static void write(ByteWriter out, double[] values, int count, Deflation deflation) {
    ValueForm form = FormSearch.of(values, count, deflation);
    form.write(out, deflation);
    IntegerSeries.write(out, form.integers(values, count), count, deflation);
  }

  static double[] read(ByteReader in, int count, Inflation inflation)
      throws DamagedSegmentException {
    ValueForm form = ValueForm.read(in, count, inflation);
    double[] values = new double[count];
    form.values(IntegerSeries.read(in, count, inflation), values);
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
