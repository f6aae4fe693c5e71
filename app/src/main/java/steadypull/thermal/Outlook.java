package steadypull.thermal;

/**
 * The courses that an ensemble found: temperatures by store, draw and moment; where they settle.
 */
final class Outlook {
  private final double[][][] celsius;
  private final double[] settled;

  /**
   * Keeps what is given.
   *
   * @param celsius degC by store, then draw, then point of the horizon grid
   * @param settled degC by store
   */
  Outlook(double[][][] celsius, double[] settled) {
    this.celsius = celsius;
    this.settled = settled;
  }

  /** Courses of all stores: degC by store, draw and point of the horizon grid. */
  double[][][] draws() {
    return celsius;
  }

  /** Courses of one store: degC by draw, then by point of the horizon grid. */
  double[][] draws(Store store) {
    return celsius[store.index()];
  }

  /** Where a store settles, degC. */
  double settled(Store store) {
    return settled[store.index()];
  }
}
