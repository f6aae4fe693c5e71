package steadypull.thermal;

import java.util.Optional;

/**
 * What a drive says again and again about the most that its engine gives: the mean of it, believed
 * the less the more it differs from time to time. Pipeline thread only.
 */
final class PullWord {
  /** Said for less, it is a peak or a moment. */
  private static final double LEAST_SECONDS = 3;

  private final double leastSpread;
  private final double memorySeconds;
  private double seconds;
  private double mean;
  private double variance;

  /**
   * A word not yet heard.
   *
   * @param leastSpread how wrong it may be at best, a share
   * @param memorySeconds what was said so long ago counts a third of what is said now
   */
  PullWord(double leastSpread, double memorySeconds) {
    this.leastSpread = leastSpread;
    this.memorySeconds = memorySeconds;
  }

  /** Takes what is said during some seconds, N.m on the plateau. */
  void accept(double newtonMetres, double span) {
    seconds = Math.min(memorySeconds, seconds + span);
    double weight = Math.min(1, span / seconds);
    double beside = newtonMetres - mean;
    mean += weight * beside;
    variance = (1 - weight) * (variance + weight * beside * beside);
  }

  /** What is said, or empty if it was said too shortly. */
  Optional<PullGuess> guess() {
    return seconds < LEAST_SECONDS || mean <= 0
        ? Optional.empty()
        : Optional.of(new PullGuess(mean, Math.hypot(leastSpread, Math.sqrt(variance) / mean)));
  }
}
