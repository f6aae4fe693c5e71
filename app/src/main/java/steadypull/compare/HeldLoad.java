package steadypull.compare;

import java.util.OptionalDouble;

/** For how long a load stayed about what it was first: the window in which loads are equal. */
final class HeldLoad {
  /** The first seconds belong to boost and gearbox. */
  private static final int FROM_SECONDS = 4;

  private static final int LEVEL_SECONDS = 16;

  /** Loads within that are equal, with the mismatch told (our choice). */
  private static final double WITHIN_SHARE = 0.1;

  /** A moment is no change of load. */
  private static final int MEAN_SECONDS = 10;

  private HeldLoad() {}

  /** Seconds from the onset, at most the stretch's; 0 if the power was not told. */
  static int seconds(PullPower power, Stretch stretch) {
    OptionalDouble first =
        Figures.median(
            power.span(
                stretch.onset() + FROM_SECONDS, stretch.onset() + FROM_SECONDS + LEVEL_SECONDS));
    if (first.isEmpty()) {
      return 0;
    }
    double level = first.getAsDouble();
    for (int second = stretch.onset() + FROM_SECONDS;
        second + MEAN_SECONDS <= stretch.end();
        second++) {
      OptionalDouble mean = power.mean(second, second + MEAN_SECONDS);
      if (mean.isEmpty() || Math.abs(mean.getAsDouble() - level) > WITHIN_SHARE * level) {
        return second + MEAN_SECONDS / 2 - stretch.onset();
      }
    }
    return stretch.seconds();
  }
}
