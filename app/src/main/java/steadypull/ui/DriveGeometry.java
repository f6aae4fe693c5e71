package steadypull.ui;

/** Where things stand on the Drive screen: px of the 1280 x 800 design. The one place for it. */
final class DriveGeometry {
  static final double WIDTH = 1280;
  static final double HEIGHT = 800;
  static final double MARGIN = 16;

  static final double HEADER_BASELINE = 33;
  static final double HEADER_LINK_RIGHT = 1172;
  static final double HEADER_GAP = 24;
  static final double RIGHT = 1264;

  static final double ADVICE_TOP = 52;
  static final double ADVICE_WIDTH = 1248;
  static final double ADVICE_HEIGHT = 132;
  static final double ADVICE_GLYPH = 28;
  static final double ADVICE_GLYPH_SCALE = 1.583;
  static final double ADVICE_TEXT_LEFT = 132;
  static final double ADVICE_ACTION_BASELINE = 72;
  static final double ADVICE_REASON_BASELINE = 113;
  static final double ADVICE_NOTE_BASELINE = 42;
  static final double ADVICE_RIGHT = 1232;
  static final double ADVICE_BUTTON_TOP = 14;
  static final double ADVICE_BUTTON_WIDTH = 112;
  static final double ADVICE_BUTTON_HEIGHT = 104;
  static final double ADVICE_BUTTON_GAP = 12;

  static final double STRIPS_TOP = 192;
  static final double STRIPS_BOTTOM = 602;
  static final double STRIP_GAP = 4;
  static final double STRIP_SMALL_HEIGHT = 64;
  static final double STRIP_LEFT = 16;
  static final double STRIP_RIGHT = 1148;
  static final double CHART_LEFT = 272;
  static final double CHART_RIGHT = 824;
  static final double NOW = 548;
  static final double TEXT_LEFT = 32;
  static final double STATE_LEFT = 844;
  static final double STATE_RIGHT = 1132;
  static final double VALUE_RIGHT = 258;

  static final double AXIS_BASELINE = 622;
  static final double MINUTE = 92;

  static final double ROAD_TOP = 630;
  static final double ROAD_CHART_BOTTOM = 726;
  static final double ROAD_CLIMB_TOP = 698;
  static final double ROAD_CLIMB_BOTTOM = 722;
  static final double ROAD_RULE = 732;
  static final double ROAD_BOTTOM = 784;
  static final double ROAD_NOW = 692;
  static final double ROAD_SPEED_BASELINE = 700;
  static final double ROAD_SPEED_LEFT = 29;
  static final double ROAD_PLACE_BASELINE = 657;
  static final double ROAD_PLACE_NOTE_BASELINE = 683;
  static final double ROAD_ORIGIN_LEFT = 556;
  static final double ROAD_ORIGIN_WIDTH = 166;
  static final double ROAD_ORIGIN_BASELINE = 720;
  static final double ROAD_ORIGIN_BASELINE_ABOVE = 651;
  static final double ROAD_READOUT_BASELINE = 770;
  static final double ROAD_POWER_CENTRE = 461;
  static final double ROAD_GEAR_CENTRE = 787;

  static final double RAIL_LEFT = 1164;
  static final double RAIL_WIDTH = 100;
  static final double MARK_TOP = 192;
  static final double MARK_HEIGHT = 288;
  static final double LIGHT_TOP = 488;
  static final double MENU_TOP = 640;
  static final double RAIL_BUTTON_HEIGHT = 144;

  private DriveGeometry() {}
}
