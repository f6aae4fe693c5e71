package steadypull.store.column;

import java.util.Optional;

/**
 * Values that lie on a grid nobody told us of, apart from roundings: signals of a vehicle's own,
 * converted units, positions from degrees and minutes. The high bits of the integer count steps of
 * the grid, the low ones say by how many neighbouring doubles the value lies beside: {@code value =
 * (high * step + offset)} moved by {@code low - 2^(bits - 1)} doubles, see {@link OrderedBits}.
 *
 * @param step positive
 * @param offset finite
 * @param bits how many low bits, 1 to 6
 */
record Grid(double step, double offset, int bits) implements ValueForm {
  static final int NUMBER = 5;

  private static final int MOST_BITS = 6;

  Grid {
    if (!isGrid(step, offset, bits)) {
      throw new IllegalArgumentException(
          "A grid has a positive step, a finite offset and 1 to 6 bits, found %s, %s and %d"
              .formatted(step, offset, bits));
    }
  }

  private static boolean isGrid(double step, double offset, int bits) {
    return step > 0
        && Double.isFinite(step)
        && Double.isFinite(offset)
        && bits >= 1
        && bits <= MOST_BITS;
  }

  static Grid read(ByteReader in) throws DamagedSegmentException {
    double step = Double.longBitsToDouble(in.littleEndian(Long.BYTES));
    double offset = Double.longBitsToDouble(in.littleEndian(Long.BYTES));
    int bits = in.octet();
    if (!isGrid(step, offset, bits)) {
      throw new DamagedSegmentException(
          "a positive step, a finite offset and 1 to 6 bits",
          step + ", " + offset + " and " + bits);
    }
    return new Grid(step, offset, bits);
  }

  /** The grid on which all values lie, if there is one. */
  static Optional<Grid> of(double[] values, int count) {
    return GridSearch.step(values, count)
        .flatMap(
            found -> {
              for (int bits = 1; bits <= MOST_BITS; bits++) {
                Grid grid = new Grid(found.step(), found.offset(), bits);
                if (grid.fits(values, count)) {
                  return Optional.of(grid);
                }
              }
              return Optional.empty();
            });
  }

  private boolean fits(double[] values, int count) {
    for (int i = 0; i < count; i++) {
      long beside = beside(values[i], high(values[i]));
      if (beside < 0 || beside >= 1L << bits) {
        return false;
      }
    }
    return true;
  }

  private long high(double value) {
    return Math.round((value - offset) / step);
  }

  private long beside(double value, long high) {
    return OrderedBits.of(value) - OrderedBits.of(high * step + offset) + (1L << (bits - 1));
  }

  @Override
  public long[] integers(double[] values, int count) {
    long[] integers = new long[count];
    for (int i = 0; i < count; i++) {
      long high = high(values[i]);
      integers[i] = (high << bits) + beside(values[i], high);
    }
    return integers;
  }

  @Override
  public void values(long[] integers, double[] values) {
    long mask = (1L << bits) - 1;
    for (int i = 0; i < values.length; i++) {
      long onGrid = OrderedBits.of((integers[i] >> bits) * step + offset);
      values[i] = OrderedBits.value(onGrid + (integers[i] & mask) - (1L << (bits - 1)));
    }
  }

  @Override
  public void write(SeriesWriter out) {
    out.body().octet(NUMBER);
    out.body().littleEndian(Double.doubleToRawLongBits(step), Long.BYTES);
    out.body().littleEndian(Double.doubleToRawLongBits(offset), Long.BYTES);
    out.body().octet(bits);
  }
}
