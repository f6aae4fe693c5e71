package steadypull.store.column;

import java.util.Arrays;

/** The distinct values in their order; an integer is the place of a value among them. */
final class Dictionary implements ValueForm {
  static final int NUMBER = 3;

  private final long[] ordered;

  private Dictionary(long[] ordered) {
    this.ordered = ordered;
  }

  static Dictionary of(double[] values, int count) {
    long[] ordered = new long[count];
    for (int i = 0; i < count; i++) {
      ordered[i] = OrderedBits.of(values[i]);
    }
    return new Dictionary(Arrays.stream(ordered).sorted().distinct().toArray());
  }

  static Dictionary read(SeriesReader in, int most) throws DamagedSegmentException {
    int count = in.body().count(most, "distinct values");
    if (count == 0) {
      throw new DamagedSegmentException("distinct values", "none");
    }
    return new Dictionary(in.series(count));
  }

  int size() {
    return ordered.length;
  }

  @Override
  public long[] integers(double[] values, int count) {
    long[] integers = new long[count];
    for (int i = 0; i < count; i++) {
      integers[i] = Arrays.binarySearch(ordered, OrderedBits.of(values[i]));
    }
    return integers;
  }

  @Override
  public void values(long[] integers, double[] values) throws DamagedSegmentException {
    for (int i = 0; i < values.length; i++) {
      long place = integers[i];
      if (place < 0 || place >= ordered.length) {
        throw new DamagedSegmentException(
            "one of " + ordered.length + " distinct values", "number " + place);
      }
      values[i] = OrderedBits.value(ordered[(int) place]);
    }
  }

  @Override
  public void write(SeriesWriter out) {
    out.body().octet(NUMBER);
    out.body().unsigned(ordered.length);
    out.series(ordered, ordered.length);
  }
}
