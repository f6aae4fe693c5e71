package steadypull.ui;

/** Where things stand on the screen that compares runs: px of the 1280 x 800 design. */
final class CompareGeometry {
  static final double LEFT = 16;
  static final double PANEL_WIDTH = 1132;
  static final double VERDICT_TOP = 78;
  static final double VERDICT_HEIGHT = 98;
  static final double VERDICT_TEXT_LEFT = 116;
  static final double CLAIM_BASELINE = 119;
  static final double MORE_BASELINE = 156;

  static final double LANES_WIDTH = 816;
  static final double PLOT_LEFT = 160;
  static final double PLOT_RIGHT = 736;
  static final double SETTLED_LEFT = 748;
  static final double SETTLED_X = 790;
  static final double LANES_RIGHT = 832;
  static final double LOAD_TOP = 186;
  static final double LOAD_HEIGHT = 50;
  static final double TEMPERATURE_TOP = 239;
  static final double TEMPERATURE_HEIGHT = 222;
  static final double GAIN_TOP = 464;
  static final double GAIN_HEIGHT = 104;
  static final double TIMES_BASELINE = 592;
  static final double VALUE_RIGHT = 154;

  static final double TABLE_TOP = 604;
  static final double TABLE_ROW = 46;
  static final double TABLE_GAP = 3;
  static final double TABLE_TEXT = 30;
  static final double FOOT_BASELINE = 779;

  static final double SIDE_LEFT = 848;
  static final double SIDE_TOP = 186;
  static final double SIDE_WIDTH = 300;
  static final double SIDE_HEIGHT = 598;
  static final double SIDE_TEXT = 866;
  static final double SIDE_ROOM = 264;
  static final double SIDE_SECOND = 1014;

  static final double RAIL_LEFT = 1164;
  static final double RAIL_WIDTH = 100;
  static final double RAIL_TOP = 16;
  static final double RAIL_HEIGHT = 186;
  static final double RAIL_GAP = 8;

  private CompareGeometry() {}
}
