package steadypull.exchange;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The guess which of the first lines of a foreign table is its header, and what parts its fields.
 *
 * @param separator one of those that are known
 * @param linesBefore lines before the header
 */
record HeaderGuess(char separator, int linesBefore) {
  private static final String SEPARATORS = ",;\t|";

  /** A field that no header has: a number, a time or a day. */
  private static final Pattern NUMBER = Pattern.compile("[-+]?[0-9.][-+0-9.:/ ]*");

  /** A table has three columns or more where other lines stand before it; fewer are sentences. */
  private static final long LEAST_SEPARATORS = 2;

  /** The guess for a table's first lines. */
  static HeaderGuess of(List<String> lines) {
    char separator = SEPARATORS.charAt(0);
    for (int each = 0; each < SEPARATORS.length(); each++) {
      char candidate = SEPARATORS.charAt(each);
      separator =
          count(lines.getFirst(), candidate) > count(lines.getFirst(), separator)
              ? candidate
              : separator;
    }
    HeaderGuess first = new HeaderGuess(separator, 0);
    HeaderGuess behind = behind(lines);
    // A header may be narrower than rows that end in a separator, but not by half.
    long fields = count(lines.getFirst(), separator);
    return fields * 2 > behind.fields(lines) ? first : behind;
  }

  /** The widest of the headers that other lines could stand before. */
  private static HeaderGuess behind(List<String> lines) {
    HeaderGuess widest = new HeaderGuess(SEPARATORS.charAt(0), 0);
    for (int each = 0; each < SEPARATORS.length(); each++) {
      char separator = SEPARATORS.charAt(each);
      for (int line = 1; line < lines.size() - 1; line++) {
        HeaderGuess guess = new HeaderGuess(separator, line);
        if (guess.fields(lines) > widest.fields(lines) && guess.isLikely(lines)) {
          widest = guess;
        }
      }
    }
    return widest;
  }

  private long fields(List<String> lines) {
    return count(lines.get(linesBefore), separator);
  }

  /** Words, no numbers, and a row of numbers as wide below. */
  private boolean isLikely(List<String> lines) {
    String header = lines.get(linesBefore);
    String row = lines.get(linesBefore + 1);
    return count(header, separator) >= LEAST_SEPARATORS
        && count(row, separator) >= count(header, separator)
        && fields(header).noneMatch(field -> NUMBER.matcher(field).matches())
        && fields(row).anyMatch(field -> NUMBER.matcher(field).matches());
  }

  private Stream<String> fields(String line) {
    return Pattern.compile(Pattern.quote(String.valueOf(separator)))
        .splitAsStream(line)
        .map(field -> field.replace("\"", "").strip());
  }

  private static long count(String line, char wanted) {
    return line.chars().filter(each -> each == wanted).count();
  }
}
