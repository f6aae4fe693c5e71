package steadypull.ui;

import java.util.List;

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
}
