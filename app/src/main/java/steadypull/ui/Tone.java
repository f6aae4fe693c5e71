package steadypull.ui;

/** How loud a part of the screen is. */
enum Tone {
  NEUTRAL("neutral", Token.EDGE, Token.INK2, Token.FAN90, Token.FAN50),
  CAUTION("caution", Token.AMBER_INK, Token.AMBER_INK, Token.FAN90_CAUTION, Token.FAN50_CAUTION),
  DANGER("danger", Token.RED_INK, Token.RED_INK, Token.FAN90_DANGER, Token.FAN50_DANGER);

  private final String styleClass;
  private final Token hatch;
  private final Token limit;
  private final Token outerBand;
  private final Token innerBand;

  Tone(String styleClass, Token hatch, Token limit, Token outerBand, Token innerBand) {
    this.styleClass = styleClass;
    this.hatch = hatch;
    this.limit = limit;
    this.outerBand = outerBand;
    this.innerBand = innerBand;
  }

  String styleClass() {
    return styleClass;
  }

  Token hatch() {
    return hatch;
  }

  Token limit() {
    return limit;
  }

  Token outerBand() {
    return outerBand;
  }

  Token innerBand() {
    return innerBand;
  }
}
