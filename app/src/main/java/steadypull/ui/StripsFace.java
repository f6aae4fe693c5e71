package steadypull.ui;

import java.util.List;
import java.util.OptionalDouble;

/**
 * All strips at one moment.
 *
 * @param timeMicros microseconds since trip start: where Now stands
 * @param strips at most four, from the top
 * @param led whether the top one is enlarged
 * @param others the remaining channels in one line; may be empty
 */
record StripsFace(long timeMicros, List<StripFace> strips, boolean led, String others) {
  static final int SHOWN = 4;

  StripsFace {
    strips = List.copyOf(strips);
  }

  /** Seconds until the leading strip meets its limit, where that is marked on strip and road. */
  OptionalDouble secondsToCrossing() {
    return led && strips.getFirst().tone() != Tone.NEUTRAL
        ? StripLabels.secondsToCrossing(strips.getFirst().state())
        : OptionalDouble.empty();
  }
}
