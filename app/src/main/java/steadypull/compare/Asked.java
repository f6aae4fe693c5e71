package steadypull.compare;

/** What a job is asked for that no channel tells. A closed set; the ids are a contract. */
public enum Asked {
  COOLANT_MIX(
      "coolant_mix",
      Kind.WORDS,
      "the coolant mix on both sides",
      "another mix takes up and carries another heat"),
  CHANGED_TOO(
      "changed_too",
      Kind.WORDS,
      "what else was changed that day",
      "another change may have made the difference"),
  OLD_CORE_CLEANED(
      "old_core_cleaned",
      Kind.WORDS,
      "whether the old core was cleaned first",
      "a part of the gain may be what cleaning alone would have given"),
  CALIBRATION_ID(
      "calibration_id",
      Kind.WORDS,
      "the calibration id of the engine's control unit",
      "with another calibration the engine's own torque is not comparable"),
  AIR_CONDITIONING(
      "air_conditioning",
      Kind.WORDS,
      "whether the air conditioning was on",
      "its condenser heats the air before the cores"),
  FAN_ENGAGED(
      "fan_engaged",
      Kind.WORDS,
      "whether the vehicle's own fan was engaged",
      "an engaged fan cools and takes power"),
  FUEL("fuel", Kind.WORDS, "which fuel was burnt", "another fuel gives another heat"),
  WIND("wind", Kind.WORDS, "the wind", "wind along the road changes the air through the cores"),
  FAN_TYPE(
      "fan_type",
      Kind.WORDS_OF_ROLLERS,
      "which fan blew on the dynamometer",
      "another fan cools otherwise"),
  FAN_DISTANCE(
      "fan_distance_m",
      Kind.NUMBER_OF_ROLLERS,
      "how far the fan stood from the grille",
      "the nearer fan cools more, whatever was changed"),
  GRILLE_BEFORE(
      "grille_before_degC",
      Kind.NUMBER_OF_ROLLERS,
      "the cell temperature at the grille before each pull",
      "the vehicle's own sensor soaks in heat at standstill"),
  GRILLE_AFTER(
      "grille_after_degC",
      Kind.NUMBER_OF_ROLLERS,
      "the cell temperature at the grille after each pull",
      "air that comes round to the front warms the later seconds"),
  ROLLER_LOAD(
      "roller_load",
      Kind.WORDS_OF_ROLLERS,
      "the load of the rollers",
      "the engine's own figure for it may be wrong"),
  ROLLER_SPEED(
      "roller_speed_km_h",
      Kind.NUMBER_OF_ROLLERS,
      "the speed of the rollers",
      "the vehicle's own speed may be wrong");

  private enum Kind {
    WORDS,
    WORDS_OF_ROLLERS,
    NUMBER_OF_ROLLERS
  }

  private final String id;
  private final Kind kind;
  private final String what;
  private final String why;

  Asked(String id, Kind kind, String what, String why) {
    this.id = id;
    this.kind = kind;
    this.what = what;
    this.why = why;
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

  /** What is asked for, to be put into a sentence: "the wind". */
  public String what() {
    return what;
  }

  /** What it costs not to know, to be put behind a colon. */
  public String why() {
    return why;
  }
}
