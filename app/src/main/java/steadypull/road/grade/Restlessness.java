package steadypull.road.grade;

/**
 * Tells from speeds that surprise to one side, second after second, that the road changes its grade
 * more than roads usually do: crests and sags are sharper than the long slopes between them. One
 * thread.
 */
final class Restlessness {
  /** Surprises of the last seconds count, s. */
  private static final double SECONDS = 3;

  private static final double KEPT = Math.exp(-1 / SECONDS);

  /** Chance alone sums up to this, one standard deviation. */
  private static final double CHANCE = 1 / Math.sqrt(1 - KEPT * KEPT);

  /** Up to so many standard deviations it is chance. */
  private static final double FROM = 1.25;

  /** Each further standard deviation counts for so much. */
  private static final double GAIN = 4;

  private static final double MOST = 16;

  private double sum;

  /**
   * Takes the surprise of a second.
   *
   * @param deviations how far the speed lay from what was expected, in standard deviations
   */
  void accept(double deviations) {
    sum = KEPT * sum + deviations;
  }

  /** How many times as much as usual the grade changes here: 1 to 16. */
  double factor() {
    double beyond = Math.abs(sum) / CHANCE - FROM;
    return Math.clamp(1 + GAIN * beyond, 1.0, MOST);
  }
}
