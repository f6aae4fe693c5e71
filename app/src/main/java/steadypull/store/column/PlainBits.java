package steadypull.store.column;

/** Any values: the integers are {@link OrderedBits}. */
record PlainBits() implements ValueForm {
  static final int NUMBER = 4;

  @Override
  public long[] integers(double[] values, int count) {
    long[] integers = new long[count];
    for (int i = 0; i < count; i++) {
      integers[i] = OrderedBits.of(values[i]);
    }
    return integers;
  }

  @Override
  public void values(long[] integers, double[] values) {
    for (int i = 0; i < values.length; i++) {
      values[i] = OrderedBits.value(integers[i]);
    }
  }

  @Override
  public void write(SeriesWriter out) {
    out.body().octet(NUMBER);
  }
}
