package steadypull.compare;

import java.util.OptionalDouble;

/**
 * Places the beginning and the end of a load where half of the step is done, to about a second.
 * Immutable.
 *
 * @param power of the trip
 */
record OnsetSearch(PullPower power) {
  /** Boost comes within 2 to 4 s, and a foot needs as long (common practice). */
  private static final int STEP_SECONDS = 6;

  private static final int LEVEL_SECONDS = 12;
  private static final double HALF = 0.5;

  /** A silence that is longer may have hidden the step. */
  private static final int HEARD_SECONDS = 3;

  /** The stretch about a rough one. */
  Stretch refined(int roughOnset, int roughEnd) {
    double on =
        middle(roughOnset + STEP_SECONDS, roughOnset + STEP_SECONDS + LEVEL_SECONDS).orElse(0);
    double before =
        middle(roughOnset - STEP_SECONDS - LEVEL_SECONDS, roughOnset - STEP_SECONDS).orElse(0);
    int onset = roughOnset;
    double half = before + HALF * (on - before);
    while (onset > 0 && onset > roughOnset - LEVEL_SECONDS && power.at(onset - 1) >= half) {
      onset--;
    }
    while (onset < roughOnset + LEVEL_SECONDS && power.at(onset) < half) {
      onset++;
    }
    double last =
        middle(roughEnd - STEP_SECONDS - LEVEL_SECONDS, roughEnd - STEP_SECONDS).orElse(0);
    double after =
        middle(roughEnd + STEP_SECONDS, roughEnd + STEP_SECONDS + LEVEL_SECONDS).orElse(0);
    double halfOff = after + HALF * (last - after);
    int end = roughEnd;
    while (end > onset + 1 && end > roughEnd - LEVEL_SECONDS && !(power.at(end - 1) >= halfOff)) {
      end--;
    }
    return new Stretch(onset, Math.max(onset + 1, end), beginning(onset));
  }

  private Stretch.Beginning beginning(int onset) {
    boolean isHeard = Figures.count(power.span(onset - HEARD_SECONDS, onset)) > 0;
    return isHeard ? Stretch.Beginning.HEARD : Stretch.Beginning.SILENT;
  }

  private OptionalDouble middle(int from, int to) {
    return Figures.median(power.span(from, to));
  }
}
