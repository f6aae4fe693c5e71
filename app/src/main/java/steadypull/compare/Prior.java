package steadypull.compare;

/**
 * What is believed of one unknown before any run: normal in its coordinate, which is the natural
 * logarithm for what cannot be negative. Immutable.
 *
 * @param isPositive whether the coordinate is the logarithm
 * @param mean coordinate that is most probable
 * @param deviation standard deviation of the coordinate, above 0
 */
record Prior(boolean isPositive, double mean, double deviation) {
  /** Of what cannot be negative; the deviation is a share. */
  static Prior positive(double usual, double share) {
    return new Prior(true, Math.log(usual), share);
  }

  /** Of what may have either sign, in its own unit. */
  static Prior free(double usual, double deviation) {
    return new Prior(false, usual, deviation);
  }

  /** The value at a coordinate, in the unknown's own unit. */
  double value(double coordinate) {
    return isPositive ? Math.exp(coordinate) : coordinate;
  }
}
