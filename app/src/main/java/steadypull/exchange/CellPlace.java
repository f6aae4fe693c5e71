package steadypull.exchange;

import java.nio.file.Path;

/**
 * A place in a table, which makes the refusals that name it.
 *
 * @param line first line of the record, from 1
 * @param column from 1; 0 means the whole line
 * @param header what heads the column; may be empty
 */
record CellPlace(Path file, long line, int column, String header) {
  private static final int LONGEST_QUOTE = 60;

  /** Makes the place of a cell, once it is needed. */
  interface Of {
    CellPlace here();
  }

  static CellPlace ofLine(Path file, long line) {
    return new CellPlace(file, line, 0, "");
  }

  TableException refusal(String expected, String found) {
    return refusal(expected, found, "");
  }

  TableException refusal(String expected, String found, String advice) {
    return new TableException(
        "%s: expected %s, found %s.%s%sNothing was taken."
            .formatted(this, expected, found, advice, advice.endsWith("\n") ? "" : " "));
  }

  /** Text as a message shows it: in quotes, control characters visible, not too long. */
  static String quoted(String text) {
    StringBuilder shown = new StringBuilder("\"");
    text.chars().limit(LONGEST_QUOTE).forEach(letter -> append(shown, (char) letter));
    return shown.append(text.length() > LONGEST_QUOTE ? "...\"" : "\"").toString();
  }

  private String heading() {
    String quoted = quoted(header);
    return quoted.substring(1, quoted.length() - 1);
  }

  private static void append(StringBuilder shown, char letter) {
    if (Character.isISOControl(letter)) {
      shown.append("\\u%04x".formatted((int) letter));
    } else {
      shown.append(letter);
    }
  }

  /** What stands in a cell, bytes and characters that no table may hold by name. */
  static String whatIs(String text) {
    if (text.indexOf('\uFFFD') >= 0) {
      return "bytes that are not UTF-8 in " + quoted(text);
    }
    if (text.indexOf('\0') >= 0) {
      return "a NUL character in " + quoted(text);
    }
    return quoted(text);
  }

  /** A path as a message shows it: control characters, which would command a terminal, visible. */
  static String shown(Path file) {
    StringBuilder shown = new StringBuilder();
    file.toString().chars().forEach(letter -> append(shown, (char) letter));
    return shown.toString();
  }

  @Override
  public String toString() {
    String where = shown(file) + ", line " + line;
    if (column == 0) {
      return where;
    }
    return where + ", column " + column + (header.isEmpty() ? "" : " (" + heading() + ")");
  }
}
