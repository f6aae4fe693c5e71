package steadypull.drive;

import java.util.Locale;
import java.util.ResourceBundle;

/**
 * The steps of a connection from the plug upwards. The words stand in one file; the README has them
 * too, and a test holds both together.
 */
enum ConnectionStep {
  PORT,
  ANSWER,
  ADAPTER,
  SENDERS,
  SUPPLY,
  BUS,
  UNITS,
  IDENTITY;

  private static final ResourceBundle WORDS =
      ResourceBundle.getBundle("steadypull.drive.ConnectionSteps", Locale.ROOT);

  /** Its place in the order, from 1. */
  int number() {
    return ordinal() + 1;
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
