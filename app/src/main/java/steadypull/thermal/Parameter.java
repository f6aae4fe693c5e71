package steadypull.thermal;

/**
 * What we believe about one physical parameter before the vehicle has shown anything. The filter
 * works on a coordinate in which the belief is normal: the logarithm for a quantity that cannot be
 * negative, else the quantity itself. Immutable.
 *
 * @param logarithmic whether the coordinate is the natural logarithm
 * @param usual the middle of the belief, in the parameter's own unit
 * @param spread standard deviation of the coordinate; for a logarithm 0.5 means "within a factor
 *     1.65, two times in three"
 */
record Parameter(boolean logarithmic, double usual, double spread) {
  /** Beyond this many spreads the coordinate has no further effect: nonsense stays bounded. */
  private static final double FARTHEST_SPREADS = 3.5;

  /** No estimate goes farther than this many spreads; a draw may. */
  private static final double FARTHEST_BELIEVED = 2.5;

  static Parameter positive(double usual, double relativeSpread) {
    return new Parameter(true, usual, relativeSpread);
  }

  static Parameter free(double usual, double spread) {
    return new Parameter(false, usual, spread);
  }

  /** The coordinate of the usual value. */
  double usualCoordinate() {
    return logarithmic ? Math.log(usual) : usual;
  }

  /** The nearest coordinate that may be believed. */
  double bounded(double coordinate) {
    double middle = usualCoordinate();
    double farthest = FARTHEST_BELIEVED * spread;
    return Math.clamp(coordinate, middle - farthest, middle + farthest);
  }

  /** The physical value at a coordinate. */
  double physical(double coordinate) {
    double middle = usualCoordinate();
    double farthest = FARTHEST_SPREADS * spread;
    double bounded = Math.clamp(coordinate, middle - farthest, middle + farthest);
    return logarithmic ? Math.exp(bounded) : bounded;
  }
}
