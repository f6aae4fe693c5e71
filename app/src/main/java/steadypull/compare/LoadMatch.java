package steadypull.compare;

/**
 * How nearly both sides pulled alike. Immutable.
 *
 * @param windowSeconds since the onsets over which the loads were taken, above 0
 * @param beforeKilowatts mean of the runs that take part
 * @param afterKilowatts likewise
 */
public record LoadMatch(int windowSeconds, double beforeKilowatts, double afterKilowatts) {
  /** How much more the runs after pulled, kW; below 0 if less. */
  public double mismatchKilowatts() {
    return afterKilowatts - beforeKilowatts;
  }

  /** The same in percent of the load before. */
  public double mismatchPercent() {
    return 100 * mismatchKilowatts() / beforeKilowatts;
  }
}
