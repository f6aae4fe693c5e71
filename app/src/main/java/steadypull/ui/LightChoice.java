package steadypull.ui;

import java.time.LocalTime;

/** What the person wants: a fixed set of colours, or the one that suits the hour. */
enum LightChoice {
  DAY("menu.day"),
  NIGHT("menu.night"),
  BY_CLOCK("menu.byClock");

  /** Dusk and dawn without a position: common practice, no source. */
  private static final LocalTime DUSK = LocalTime.of(19, 0);

  private static final LocalTime DAWN = LocalTime.of(7, 0);

  private final String key;

  LightChoice(String key) {
    this.key = key;
  }

  /** Key of its name among the words. */
  String key() {
    return key;
  }

  /** The colours to show at a time of day. */
  Light at(LocalTime time) {
    return switch (this) {
      case DAY -> Light.DAY;
      case NIGHT -> Light.NIGHT;
      case BY_CLOCK -> time.isBefore(DAWN) || !time.isBefore(DUSK) ? Light.NIGHT : Light.DAY;
    };
  }

  /** The choice that follows when the menu row is pressed. */
  LightChoice next() {
    return switch (this) {
      case DAY -> NIGHT;
      case NIGHT -> BY_CLOCK;
      case BY_CLOCK -> DAY;
    };
  }
}
