package steadypull.compare;

/**
 * A pull while it is driven. Immutable.
 *
 * @param start what was heard just before
 * @param from second at which the load came on
 * @param last second under load so far
 * @param kilowattSeconds of the seconds under load
 * @param count of them
 */
record PullUnderWay(PullSecond start, int from, int last, double kilowattSeconds, int count) {
  /** Below this share of its own mean it is no longer pulled. */
  private static final double OFF_SHARE = 0.5;

  /** A gear change is shorter. */
  private static final int BREAK_SECONDS = 6;

  static PullUnderWay begin(PullSecond before, PullSecond first) {
    double kilowatts = first.kilowatts().orElse(0);
    return new PullUnderWay(before, first.second(), first.second(), kilowatts, 1);
  }

  PullUnderWay after(PullSecond second) {
    double own = second.kilowatts().orElse(0);
    return own >= OFF_SHARE * kilowatts()
        ? new PullUnderWay(start, from, second.second(), kilowattSeconds + own, count + 1)
        : this;
  }

  boolean hasEnded(PullSecond second) {
    return second.second() - last > BREAK_SECONDS;
  }

  int seconds() {
    return last - from + 1;
  }

  /** Mean of the seconds under load, kW. */
  double kilowatts() {
    return kilowattSeconds / count;
  }
}
