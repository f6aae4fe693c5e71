package steadypull.compare;

import java.util.Locale;

/** What a job is asked for that no channel tells. A closed set; the ids are a contract. */
public enum Asked {
  COOLANT_MIX(false, "the coolant mix on both sides", "a change of the mix changes heat taken up"),
  CHANGED_TOO(
      false, "what else was changed that day", "another change may have made the difference"),
  OLD_CORE_CLEANED(
      false,
      "whether the old core was cleaned first",
      "a part of the gain may be what cleaning alone would have given"),
  CALIBRATION_ID(
      false,
      "the calibration id of the engine's control unit",
      "with another calibration the engine's own torque is not comparable"),
  AIR_CONDITIONING(
      false, "whether the air conditioning was on", "its condenser heats the air before the cores"),
  FAN_ENGAGED(
      false, "whether the vehicle's own fan was engaged", "an engaged fan cools and takes power"),
  FUEL(false, "which fuel was burnt", "another fuel gives another heat"),
  WIND(false, "the wind", "wind along the road changes the air through the cores"),
  FAN_TYPE(
      true, "which fan blew on the dynamometer", "another fan cools otherwise than the change"),
  FAN_DISTANCE(
      true,
      "how far the fan stood from the grille",
      "the nearer fan cools more, whatever was changed"),
  GRILLE_BEFORE(
      true,
      "the cell temperature at the grille before each pull",
      "the vehicle's own sensor soaks in heat at standstill"),
  GRILLE_AFTER(
      true,
      "the cell temperature at the grille after each pull",
      "air that comes round to the front warms the later seconds"),
  ROLLER_LOAD(true, "the load of the rollers", "the engine's own figure for it may be wrong"),
  ROLLER_SPEED(true, "the speed of the rollers", "the vehicle's own speed may be wrong");

  private final boolean isOfRollers;
  private final String what;
  private final String why;

  Asked(boolean isOfRollers, String what, String why) {
    this.isOfRollers = isOfRollers;
    this.what = what;
    this.why = why;
  }

  /** The lasting word in job files: {@code coolant_mix}. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Whether it is asked for runs on a dynamometer only. */
  public boolean isOfRollers() {
    return isOfRollers;
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
