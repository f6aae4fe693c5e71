package steadypull.drive;

import java.util.Locale;
import java.util.ResourceBundle;

/**
 * The steps of a connection from the plug upwards. The words stand in one file; the README has them
 * too, and a test holds both together.
 */
enum ConnectionStep {
  PORT(1),
  ANSWER(2),
  ADAPTER(3),
  SENDERS(4),
  SUPPLY(5),
  BUS(6),
  UNITS(7),
  IDENTITY(8);

  private static final ResourceBundle WORDS =
      ResourceBundle.getBundle("steadypull.drive.ConnectionSteps", Locale.ROOT);

  private final int number;

  ConnectionStep(int number) {
    this.number = number;
  }

  /** Its place in the order, from 1. */
  int number() {
    return number;
  }

  /** What holds when the step is taken. */
  String title() {
    return words("title");
  }

  /** What to do where it is not. */
  String remedy() {
    return words("remedy");
  }

  private String words(String kind) {
    return WORDS.getString(name().toLowerCase(Locale.ROOT) + "." + kind);
  }
}
