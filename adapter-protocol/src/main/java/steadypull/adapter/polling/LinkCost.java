package steadypull.adapter.polling;

import java.time.Duration;

/**
 * What a request costs on this link, learnt from the requests that were made: a part for each
 * request (its characters, the control unit's answer time) and a part for each line of the answer
 * (its characters, its frame). A straight line fitted by least squares, in which old requests fade.
 * Used by one thread.
 */
final class LinkCost {
  /** Weight of the past after one more request: some five hundred requests count. */
  private static final double FADING = 0.998;

  /** Before both parts can be told apart: 115200 baud, 15 ms of answer time (estimated). */
  private static final double FIRST_REQUEST_NANOS = 17e6;

  private static final double FIRST_LINE_NANOS = 2e6;
  private static final double LEAST_SPREAD = 0.002;

  /** A request that waited for something else says nothing about the link. */
  private static final double MOST_NANOS = Duration.ofSeconds(1).toNanos();

  private double weight;
  private double lines;
  private double nanos;
  private double squares;
  private double products;

  /** Takes how long a request with an answer of so many lines took. */
  void took(int answerLines, long spanNanos) {
    if (spanNanos <= 0 || spanNanos > MOST_NANOS) {
      return;
    }
    weight = FADING * weight + 1;
    lines = FADING * lines + answerLines;
    nanos = FADING * nanos + spanNanos;
    squares = FADING * squares + (double) answerLines * answerLines;
    products = FADING * products + (double) answerLines * spanNanos;
  }

  /** What a request with an answer of so many lines takes, relative to others; above zero. */
  double of(int answerLines) {
    double line = lineNanos();
    double request = weight > 0 ? nanos / weight - line * lines / weight : FIRST_REQUEST_NANOS;
    return Math.max(request, 0) + line * answerLines;
  }

  private double lineNanos() {
    double spread = weight > 0 ? squares / weight - square(lines / weight) : 0;
    if (spread < LEAST_SPREAD) {
      return FIRST_LINE_NANOS;
    }
    double slope = (products / weight - lines / weight * (nanos / weight)) / spread;
    return Math.max(1, Math.min(slope, nanos / lines));
  }

  private static double square(double value) {
    return value * value;
  }
}
