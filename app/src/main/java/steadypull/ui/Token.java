package steadypull.ui;

/** Names of the colours in {@code tokens.css}. */
enum Token {
  GROUND("-ground"),
  SURFACE("-surface"),
  SUNK("-sunk"),
  INK("-ink"),
  INK2("-ink2"),
  INK3("-ink3"),
  RULE("-rule"),
  EDGE("-edge"),
  TERRAIN("-terrain"),
  TERRAIN_LINE("-terrainline"),
  RED("-red"),
  RED_INK("-redink"),
  ON_RED("-onred"),
  AMBER("-amber"),
  AMBER_INK("-amberink"),
  ON_AMBER("-onamber"),
  GREEN("-green"),
  GREEN_INK("-greenink"),
  FAN90("-fan90"),
  FAN50("-fan50"),
  FAN90_CAUTION("-fan90a"),
  FAN50_CAUTION("-fan50a"),
  FAN90_DANGER("-fan90r"),
  FAN50_DANGER("-fan50r"),
  WEDGE("-wedge"),
  WEDGE_LINE("-wedgeline");

  private final String property;

  Token(String property) {
    this.property = property;
  }

  /** Its name in the style sheet. */
  String property() {
    return property;
  }
}
