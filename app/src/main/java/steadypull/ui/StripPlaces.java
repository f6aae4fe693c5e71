package steadypull.ui;

/**
 * Baselines and edges inside one strip, relative to its top; each form has its own.
 *
 * @param height height of the strip
 * @param form its form
 */
record StripPlaces(double height, StripSlot.Form form) {
  private static final double CALM_HEIGHT = 99.5;
  private static final double HERO_BEARING = 3;

  static StripPlaces of(StripSlot slot) {
    return new StripPlaces(slot.height(), slot.form());
  }

  /** A calm strip may be taller than with four: its texts stay in the middle. */
  private double choose(double calm, double leading, double small) {
    return switch (form) {
      case CALM -> calm + (height - CALM_HEIGHT) / 2;
      case LEADING -> leading;
      case SMALL -> small;
    };
  }

  /** Values stand at the right; a leading one under its name at the left. */
  double valueRight(double valueWidth) {
    return form == StripSlot.Form.LEADING
        ? DriveGeometry.TEXT_LEFT - HERO_BEARING + valueWidth
        : DriveGeometry.VALUE_RIGHT;
  }

  double noteBaseline() {
    return form == StripSlot.Form.LEADING ? height / 2 + 8 : height / 2 + 9;
  }

  double glyphTop() {
    return choose(32.8, 17, 17);
  }

  double glyphScale() {
    return form == StripSlot.Form.CALM ? 0.667 : 0.583;
  }

  double wordLeft() {
    return switch (form) {
      case CALM -> 890;
      case LEADING -> DriveGeometry.STATE_LEFT;
      case SMALL -> 886;
    };
  }

  double wordBaseline() {
    return choose(50.8, 40, 31);
  }

  double detailBaseline() {
    return choose(79.8, 184, 56);
  }

  double heroBaseline() {
    return 140;
  }

  double titleBaseline() {
    return 40;
  }
}
