package steadypull.ui;

/** The clearance glyphs: shape and tint together say how near a limit is. */
enum Glyph {
  HOLDS("M2,6H46V13H2Z M2,32H46V43H2Z", ""),
  MAY_REACH("M2,6H46V13H2Z M2,43H46V16Z", "quiet"),
  CAUTION("M2,5H46V12H2Z M4,44H46V19Z", "caution"),
  CAUTION_BLOCK(Glyph.BLOCK, "caution"),
  DANGER(Glyph.BLOCK, "danger"),
  NO_DATA(Glyph.DOTS, "caution"),
  UNKNOWN(Glyph.DOTS, "grey");

  private static final String BLOCK =
      "M2,4H46V44H2Z M20.5,10 L27.5,10 L26.5,30 H21.5 Z M21,34 H27 V39.5 H21 Z";
  private static final String DOTS =
      "M2,6H46V13H2Z M4,33H12V41H4Z M20,33H28V41H20Z M36,33H44V41H36Z";

  private final String path;
  private final String styleClass;

  Glyph(String path, String styleClass) {
    this.path = path;
    this.styleClass = styleClass;
  }

  /** Outline in a box of 48, filled even-odd. */
  String path() {
    return path;
  }

  /** Tint; empty for the plain one. */
  String styleClass() {
    return styleClass;
  }
}
