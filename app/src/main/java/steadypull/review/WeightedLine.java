package steadypull.review;

/**
 * A straight line by weighted least squares, about the weighted middle of what it goes through.
 * Immutable.
 *
 * @param middle weighted mean of the places
 * @param height of the line there
 * @param slope of the line
 * @param slopeDeviation standard deviation of the slope, if each weight is one over a variance
 * @param squares weighted sum of squared misses
 */
record WeightedLine(
    double middle, double height, double slope, double slopeDeviation, double squares) {
  /**
   * The line through points.
   *
   * @param places at least two different ones
   * @param heights as many
   * @param weights as many; above 0
   */
  static WeightedLine through(double[] places, double[] heights, double[] weights) {
    double all = 0;
    double middle = 0;
    double height = 0;
    for (int i = 0; i < weights.length; i++) {
      all += weights[i];
      middle += weights[i] * places[i];
      height += weights[i] * heights[i];
    }
    middle /= all;
    height /= all;
    double along = 0;
    double both = 0;
    for (int i = 0; i < weights.length; i++) {
      double away = places[i] - middle;
      along += weights[i] * away * away;
      both += weights[i] * away * (heights[i] - height);
    }
    WeightedLine line = new WeightedLine(middle, height, both / along, 1 / Math.sqrt(along), 0);
    return new WeightedLine(
        middle, height, line.slope, line.slopeDeviation, line.squares(places, heights, weights));
  }

  /** How much higher a point lies than the line. */
  double missed(double place, double pointHeight) {
    return pointHeight - height - slope * (place - middle);
  }

  private double squares(double[] places, double[] heights, double[] weights) {
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      double missed = missed(places[i], heights[i]);
      sum += weights[i] * missed * missed;
    }
    return sum;
  }
}
