package steadypull.thermal;

/**
 * A word about the most that an engine gives.
 *
 * @param newtonMetres torque on the plateau, above 0
 * @param spread how wrong that may be two times in three, as a share, above 0
 */
record PullGuess(double newtonMetres, double spread) {
  /** Both words together, each weighed by the inverse of its variance. */
  PullGuess with(PullGuess other) {
    double here = 1 / (spread * spread);
    double there = 1 / (other.spread * other.spread);
    double both = here + there;
    return new PullGuess(
        (newtonMetres * here + other.newtonMetres * there) / both, 1 / Math.sqrt(both));
  }
}
