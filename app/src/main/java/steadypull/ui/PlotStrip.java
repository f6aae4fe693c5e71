package steadypull.ui;

/**
 * A strip to draw.
 *
 * @param face what it shows
 * @param slot where
 */
record PlotStrip(StripFace face, StripSlot slot) {
  StripScale scale() {
    return PlotView.scale(face.state(), slot);
  }

  boolean leads() {
    return slot.form() == StripSlot.Form.LEADING;
  }
}
