package steadypull.ui;

/** Where things stand on the parked screens: px of the 1280 x 800 design. */
final class ParkedGeometry {
  static final double LEFT = 16;
  static final double RIGHT = 1264;
  static final double TITLE_BASELINE = 36;
  static final double SUBTITLE_BASELINE = 62;
  static final double STEP_BASELINE = 104;
  static final double STEP_TITLE_INDENT = 30;
  static final double LIST_TOP = 120;
  static final double BOTTOM = 784;
  static final double LABEL_BASELINE = 136;
  static final double FIELD_TOP = 148;
  static final double KNOWN_TOP = 248;
  static final double NOTE_HEIGHT = 156;
  static final double NOTE_PAD = 16;
  static final double NOTE_GAP = 6;
  static final double ROW_HEIGHT = 86;
  static final double ROW_GAP = 10;
  static final double COLUMN_WIDTH = 372;
  static final double PORT_LEFT = 408;
  static final double BEFORE_LEFT = 800;
  static final double PAD = 20;
  static final double SCROLL_BAR = 14;
  static final double DRIVE_HEIGHT = 120;
  static final double PROSE_TOP = 140;
  static final double PROSE_GAP = 14;
  static final double MENU_WIDTH = 760;
  static final double MENU_TOP = 84;
  static final double MENU_ROW_HEIGHT = 84;
  static final double MENU_ROW_GAP = 4;
  static final double MENU_COLUMN_WIDTH = 616;
  static final double MENU_COLUMN_GAP = 16;
  static final double PAGE_WIDTH = 1100;

  static final double SENSORS_TOP = 80;
  static final double SENSORS_NAME_WIDTH = 316;
  static final double SENSORS_BUTTON_WIDTH = 176;

  static final double TRIPS_LEFT = 1080;
  static final double COMPARE_LEFT = 886;
  static final double TRIPS_TOP = 12;
  static final double TRIPS_HEIGHT = 84;

  private ParkedGeometry() {}
}
