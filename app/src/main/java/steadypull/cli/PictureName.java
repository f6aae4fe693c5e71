package steadypull.cli;

import java.util.Locale;
import steadypull.advice.AdviceLine;

/** File names of pictures. */
final class PictureName {
  private PictureName() {}

  /** Such as {@code drive-advise-night.png}. */
  static String of(AdviceLine.State state, boolean night) {
    String word = state.name().toLowerCase(Locale.ROOT).replace('_', '-');
    return "drive-" + word + (night ? "-night" : "-day") + ".png";
  }
}
