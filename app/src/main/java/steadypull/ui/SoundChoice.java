package steadypull.ui;

import steadypull.advice.Level;

/**
 * How loudly the driver wants to be told. A warning can be lowered, never switched off, and the
 * menu says so.
 */
enum SoundChoice {
  SPOKEN("menu.soundSpoken", 0.8, 1, true),
  TONES("menu.soundTones", 0.8, 1, false),
  QUIET("menu.soundQuiet", 0.3, 0.5, false),
  WARNINGS("menu.soundWarnings", 0, 0.5, false);

  private final String key;
  private final double cautionVolume;
  private final double warningVolume;
  private final boolean speaks;

  SoundChoice(String key, double cautionVolume, double warningVolume, boolean speaks) {
    this.key = key;
    this.cautionVolume = cautionVolume;
    this.warningVolume = warningVolume;
    this.speaks = speaks;
  }

  /** Key of its name among the words. */
  String key() {
    return key;
  }

  /** How loud, 0 (not at all) to 1. */
  double volume(Level level) {
    return switch (level) {
      case NOTICE -> 0;
      case CAUTION -> cautionVolume;
      case WARNING -> warningVolume;
    };
  }

  /** Whether what to do is spoken after the tone. */
  boolean speaks() {
    return speaks;
  }

  /** The choice that follows when the menu row is pressed. */
  SoundChoice next() {
    return switch (this) {
      case SPOKEN -> TONES;
      case TONES -> QUIET;
      case QUIET -> WARNINGS;
      case WARNINGS -> SPOKEN;
    };
  }
}
