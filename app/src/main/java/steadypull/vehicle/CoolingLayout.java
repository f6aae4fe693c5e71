package steadypull.vehicle;

import java.util.Optional;
import java.util.stream.Stream;

/** How the charge air is cooled. */
public enum CoolingLayout {
  AIR_TO_AIR("air-to-air"),
  WATER_TO_AIR("water-to-air");

  private final String word;

  CoolingLayout(String word) {
    this.word = word;
  }

  /** The word used in files and commands. */
  public String word() {
    return word;
  }

  /** The layout of that word, or empty if there is none. */
  public static Optional<CoolingLayout> of(String word) {
    return Stream.of(values()).filter(layout -> layout.word.equals(word)).findFirst();
  }
}
