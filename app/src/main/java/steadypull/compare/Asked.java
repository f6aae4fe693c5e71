package steadypull.compare;

/**
 * What a job is asked for that no channel tells; {@link RunWords} has the words. A closed set; the
 * ids are a contract.
 */
public enum Asked {
  COOLANT_MIX("coolant_mix", Kind.WORDS),
  CHANGED_TOO("changed_too", Kind.WORDS),
  OLD_CORE_CLEANED("old_core_cleaned", Kind.WORDS),
  CALIBRATION_ID("calibration_id", Kind.WORDS),
  AIR_CONDITIONING("air_conditioning", Kind.WORDS),
  FAN_ENGAGED("fan_engaged", Kind.WORDS),
  FUEL("fuel", Kind.WORDS),
  WIND("wind", Kind.WORDS),
  FAN_TYPE("fan_type", Kind.WORDS_OF_ROLLERS),
  FAN_DISTANCE("fan_distance_m", Kind.NUMBER_OF_ROLLERS),
  GRILLE_BEFORE("grille_before_degC", Kind.NUMBER_OF_ROLLERS),
  GRILLE_AFTER("grille_after_degC", Kind.NUMBER_OF_ROLLERS),
  ROLLER_LOAD("roller_load", Kind.WORDS_OF_ROLLERS),
  ROLLER_SPEED("roller_speed_km_h", Kind.NUMBER_OF_ROLLERS);

  private enum Kind {
    WORDS,
    WORDS_OF_ROLLERS,
    NUMBER_OF_ROLLERS
  }

  private final String id;
  private final Kind kind;

  Asked(String id, Kind kind) {
    this.id = id;
    this.kind = kind;
  }

  /** The lasting word in job files: {@code coolant_mix}. */
  public String id() {
    return id;
  }

  /** Whether it is asked for runs on a dynamometer only. */
  public boolean isOfRollers() {
    return kind != Kind.WORDS;
  }

  /** Whether the answer is a number in the unit that the id ends with. */
  public boolean isNumber() {
    return kind == Kind.NUMBER_OF_ROLLERS;
  }
}
