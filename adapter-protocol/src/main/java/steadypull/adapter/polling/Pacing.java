package steadypull.adapter.polling;

import java.time.Duration;

/**
 * How hard to ask.
 *
 * @param leastGap least span between the starts of two requests; zero or more
 * @param fastIsAlwaysDue whether the fast class is asked whenever nothing else is due
 * @param mostParameters parameters in one request: 1, or up to 6 on CAN
 */
public record Pacing(Duration leastGap, boolean fastIsAlwaysDue, int mostParameters) {
  /** At most twenty requests a second. */
  private static final Duration POLITE_GAP = Duration.ofMillis(50);

  public Pacing {
    if (leastGap.isNegative() || mostParameters < 1 || mostParameters > 6) {
      throw new IllegalArgumentException(
          "A pacing has a gap from zero on and 1 to 6 parameters, found %s and %d"
              .formatted(leastGap, mostParameters));
    }
  }

  /** Due times as the channels need, at most 20 requests a second. */
  public static Pacing polite(int mostParameters) {
    return new Pacing(POLITE_GAP, false, mostParameters);
  }

  /** As fast as the link allows. */
  public static Pacing full(int mostParameters) {
    return new Pacing(Duration.ZERO, true, mostParameters);
  }
}
