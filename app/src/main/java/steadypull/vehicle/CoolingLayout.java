package steadypull.vehicle;

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
}
