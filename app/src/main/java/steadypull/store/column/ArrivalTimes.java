package steadypull.store.column;

/**
 * The times of arrivals. How long an answer takes depends on what was asked, and what follows what
 * repeats itself: the time from one arrival to the next is expected to be what it was on average
 * between arrivals of the same two shapes before. Kept is the difference, in units of the grid on
 * which all times lie.
 *
 * <pre>
 * start      signed     time of the first arrival, microseconds
 * unit       unsigned   all times lie multiples of it apart
 * foreseen   1 octet    1 if anything is expected, 0 if not
 * surprises  series     of each arrival but the first: time since the one before, less expected
 * </pre>
 *
 * Expectations have four binary places and move by an eighth of a surprise (rounded down); the
 * first time a pair occurs the time since the arrival before that is expected, 0 at the beginning.
 */
final class ArrivalTimes {
  /** Pairs of shapes share a place where there are many; that costs bytes, but does no harm. */
  private static final int PLACES = 1 << 12;

  private static final int HASH = 31;
  private static final int BINARY_PLACES = 4;
  private static final int PACE_BITS = 3;

  private final long[] expected = new long[PLACES];
  private final boolean[] isKnown = new boolean[PLACES];
  private long before;

  private final int[] shapes;

  private ArrivalTimes(int[] shapes) {
    this.shapes = shapes;
  }

  static void write(SeriesWriter out, long[] times, int[] shapes) {
    long unit = CommonStep.of(times, times.length);
    out.body().signed(times[0]);
    out.body().unsigned(unit);
    SeriesWriter foreseen = out.attempt();
    foreseen.series(surprises(times, unit, shapes), times.length - 1);
    SeriesWriter plain = out.attempt();
    plain.series(surprises(times, unit, new int[0]), times.length - 1);
    boolean isForeseen = foreseen.size() < plain.size();
    out.body().octet(isForeseen ? 1 : 0);
    out.series(surprises(times, unit, isForeseen ? shapes : new int[0]), times.length - 1);
  }

  private static long[] surprises(long[] times, long unit, int[] shapes) {
    ArrivalTimes memory = new ArrivalTimes(shapes);
    long[] surprises = new long[times.length - 1];
    for (int i = 1; i < times.length; i++) {
      long sinceBefore = times[i] - times[i - 1];
      long units = unit == 1 ? sinceBefore : sinceBefore / unit;
      surprises[i - 1] = units - memory.expect(i);
      memory.learn(i, units);
    }
    return surprises;
  }

  /** The times of arrivals, at least one. */
  static long[] read(SeriesReader in, int[] shapes) throws DamagedSegmentException {
    long[] times = new long[shapes.length];
    times[0] = in.body().signed();
    long unit = in.body().unsigned();
    boolean isForeseen = in.body().count(1, "as a mark") == 1;
    long[] surprises = in.series(times.length - 1);
    ArrivalTimes memory = new ArrivalTimes(isForeseen ? shapes : new int[0]);
    for (int i = 1; i < times.length; i++) {
      long units = surprises[i - 1] + memory.expect(i);
      memory.learn(i, units);
      times[i] = times[i - 1] + units * unit;
    }
    return times;
  }

  private long expect(int arrival) {
    if (shapes.length == 0) {
      return 0;
    }
    int place = place(arrival);
    return isKnown[place] ? expected[place] >> BINARY_PLACES : before;
  }

  private void learn(int arrival, long units) {
    if (shapes.length == 0) {
      return;
    }
    int place = place(arrival);
    long told = units << BINARY_PLACES;
    expected[place] =
        isKnown[place] ? expected[place] + ((told - expected[place]) >> PACE_BITS) : told;
    isKnown[place] = true;
    before = units;
  }

  private int place(int arrival) {
    return (shapes[arrival - 1] * HASH + shapes[arrival]) & (PLACES - 1);
  }
}
