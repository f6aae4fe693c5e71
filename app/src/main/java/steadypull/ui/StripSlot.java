package steadypull.ui;

import java.util.ArrayList;
import java.util.List;

/**
 * The place of one strip.
 *
 * @param top y of its upper edge
 * @param height its height
 * @param form how its texts are set
 */
record StripSlot(double top, double height, Form form) {

  /** How the texts of a strip are set; each has its style class. */
  enum Form {
    CALM("calm"),
    LEADING("leading"),
    SMALL("small");

    private final String styleClass;

    Form(String styleClass) {
      this.styleClass = styleClass;
    }

    String styleClass() {
      return styleClass;
    }
  }

  /** Slots from the top for so many strips: all equal, or the first one enlarged. */
  static List<StripSlot> slots(int count, boolean led) {
    List<StripSlot> slots = new ArrayList<>();
    double room = DriveGeometry.STRIPS_BOTTOM - DriveGeometry.STRIPS_TOP;
    double gaps = DriveGeometry.STRIP_GAP * (count - 1);
    double small = DriveGeometry.STRIP_SMALL_HEIGHT;
    double top = DriveGeometry.STRIPS_TOP;
    for (int index = 0; index < count; index++) {
      Form form = !led ? Form.CALM : index == 0 ? Form.LEADING : Form.SMALL;
      double height =
          switch (form) {
            case CALM -> (room - gaps) / count;
            case LEADING -> room - gaps - small * (count - 1);
            case SMALL -> small;
          };
      slots.add(new StripSlot(top, height, form));
      top += height + DriveGeometry.STRIP_GAP;
    }
    return slots;
  }

  /** The place between this one and another, in the other's form. */
  StripSlot towards(StripSlot other, double share) {
    return new StripSlot(
        top + (other.top - top) * share, height + (other.height - height) * share, other.form);
  }
}
