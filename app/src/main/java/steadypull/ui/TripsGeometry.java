package steadypull.ui;

/** Where things stand on the trips screen: px of the 1280 x 800 design. */
final class TripsGeometry {
  static final double LIST_WIDTH = 520;
  static final double SEARCH_TOP = 80;
  static final double FILTERS_TOP = 174;
  static final double FILTER_GAP = 10;
  static final double FILTER_WIDTH = (LIST_WIDTH - FILTER_GAP) / 2;
  static final double LIST_TOP = 268;
  static final double ROW_HEIGHT = 84;
  static final double ROW_PAD = 14;
  static final double ROW_FIRST_BASELINE = 35;
  static final double ROW_SECOND_BASELINE = 63;

  static final double SHEET_LEFT = 552;
  static final double SHEET_WIDTH = 566;
  static final double SHEET_TOP = 16;
  static final double INNER_LEFT = SHEET_LEFT + ParkedGeometry.PAD;
  static final double INNER_WIDTH = SHEET_WIDTH - 2 * ParkedGeometry.PAD;
  static final double TITLE_BASELINE = 53;
  static final double SUBTITLE_BASELINE = 81;
  static final double STRIP_TOP = 98;
  static final double STRIP_HEIGHT = 132;
  static final double STRIP_WORDS_BASELINE = 253;
  static final double NEAREST_WIDTH = 374;
  static final double NEAREST_BESIDE_SECONDS = 320;
  static final double FACTS_TOP = 268;
  static final double FOOT_TOP = 690;
  static final double FOOT_HEIGHT = 84;
  static final double TOLD_BOTTOM = 680;
  static final double FACTS_BOTTOM = 654;
  static final double FACT_CAPTION_WIDTH = 116;
  static final double FACT_GAP = 12;

  static final double FIELDS_TOP = 98;
  static final double FIELD_HEIGHT = 84;
  static final double FIELD_LABEL = 26;
  static final double FIELD_GAP = 12;
  static final double FIELD_STEP = FIELD_LABEL + FIELD_HEIGHT + FIELD_GAP;

  static final double RAIL_LEFT = 1134;
  static final double RAIL_WIDTH = 130;
  static final double RAIL_TOP = 16;
  static final double RAIL_GAP = 8;
  static final int RAIL_BUTTONS = 5;
  static final double RAIL_HEIGHT =
      (ParkedGeometry.BOTTOM - RAIL_TOP - (RAIL_BUTTONS - 1) * RAIL_GAP) / RAIL_BUTTONS;

  private TripsGeometry() {}
}
