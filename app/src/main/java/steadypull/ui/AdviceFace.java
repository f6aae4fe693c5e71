package steadypull.ui;

import java.util.Set;

/**
 * The advice line, ready to show.
 *
 * @param look fill or frame
 * @param glyph the clearance glyph
 * @param action the large line
 * @param reason the line below
 * @param note what was done about it, at the right; may be empty
 * @param buttons what may be pressed
 * @param snooze how long it may be put aside; empty if it may not
 */
record AdviceFace(
    Look look,
    Glyph glyph,
    String action,
    String reason,
    String note,
    Set<Answer> buttons,
    String snooze) {
  AdviceFace {
    buttons = Set.copyOf(buttons);
  }

  /** Fill or frame of the line; each has its style class. */
  enum Look {
    QUIET("quiet"),
    AMBER_FILL("amber-fill"),
    RED_FILL("red-fill"),
    AMBER_FRAME("amber-frame"),
    RED_FRAME("red-frame"),
    DASHED("dashed");

    private final String styleClass;

    Look(String styleClass) {
      this.styleClass = styleClass;
    }

    String styleClass() {
      return styleClass;
    }
  }

  /** What a person may answer. */
  enum Answer {
    GOT_IT,
    SNOOZE,
    SHOW
  }
}
