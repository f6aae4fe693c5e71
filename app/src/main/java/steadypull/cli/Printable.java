package steadypull.cli;

/**
 * Texts that come from elsewhere, as a terminal may be given them: whatever would steer it, or turn
 * the direction of writing, is shown as its number instead.
 */
final class Printable {
  private static final String CUT = "...";

  private Printable() {}

  /** On one line. */
  static String line(String text) {
    return shown(text.strip().replaceAll("\\s*\\R\\s*", " "));
  }

  /**
   * On one line of bounded length.
   *
   * @param most characters, 4 or more
   */
  static String line(String text, int most) {
    String line = line(text);
    return line.codePointCount(0, line.length()) <= most
        ? line
        : line.substring(0, line.offsetByCodePoints(0, most - CUT.length())).stripTrailing() + CUT;
  }

  /** With its line breaks; every line but the first is indented. */
  static String indented(String text, int blanks) {
    String indent = "\n" + " ".repeat(blanks);
    return String.join(indent, text.lines().map(Printable::shown).toList());
  }

  /**
   * Our own text with line breaks between words.
   *
   * @param most characters of a line, more than the longest word has
   */
  static String wrapped(String text, int most) {
    return text.replaceAll("(.{1," + most + "})(?: +|$)", "$1\n").stripTrailing();
  }

  private static String shown(String text) {
    StringBuilder shown = new StringBuilder();
    text.codePoints().forEach(each -> append(shown, each));
    return shown.toString();
  }

  private static void append(StringBuilder shown, int letter) {
    switch (Character.getType(letter)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          shown.append("\\u%04x".formatted(letter));
      default -> shown.appendCodePoint(letter);
    }
  }
}
