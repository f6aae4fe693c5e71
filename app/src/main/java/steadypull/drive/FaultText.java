package steadypull.drive;

import java.util.regex.Pattern;

/** Messages fit to be read and kept. Stateless. */
final class FaultText {
  private static final Pattern UNPRINTABLE = Pattern.compile("[\\p{Cntrl}\\p{Cf}\\uFFFD]+");

  private FaultText() {}

  /** The one message that a refusal of another room carries. */
  static String of(Throwable fault) {
    String message = fault.getMessage();
    return message == null ? fault.getClass().getSimpleName() : message;
  }

  /**
   * A text that may quote what came over a wire: bytes that are no characters, and such as command
   * a terminal, become question marks.
   */
  static String printable(String text) {
    return UNPRINTABLE.matcher(text).replaceAll("?");
  }
}
