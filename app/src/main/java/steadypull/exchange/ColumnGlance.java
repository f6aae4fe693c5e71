package steadypull.exchange;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What the first rows of a foreign table show of one column. One thread. */
final class ColumnGlance {
  /** Cells that are kept to tell the form of a time. */
  private static final int MOST_EXAMPLES = 200;

  /** More different words are a column of text. Our choice. */
  private static final int MOST_WORDS = 3;

  /** How programs write that there is no value, in small letters (common practice, no source). */
  private static final Set<String> NONE =
      Set.of("-", "--", "---", "?", "n/a", "#n/a", "na", "n.a.", "nan", "null", "nil", "none");

  private final Map<String, Integer> words = new LinkedHashMap<>();
  private final int index;
  private final String header;
  private final List<String> examples = new ArrayList<>();
  private long filled;
  private long numbers;
  private double least = Double.POSITIVE_INFINITY;
  private double greatest = Double.NEGATIVE_INFINITY;
  private String before = "";
  private boolean isRepeating;

  ColumnGlance(int index, String header) {
    this.index = index;
    this.header = header;
  }

  /** Looks at a cell that is not blank. */
  void text(String cell) {
    filled++;
    if (examples.size() < MOST_EXAMPLES) {
      examples.add(cell);
    }
    isRepeating |= cell.equals(before);
    before = cell;
  }

  /** The cell that was looked at last is this number. */
  void number(double value) {
    numbers++;
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
  }

  /** The cell that was looked at last is no number. */
  void word(String cell) {
    if (words.size() <= MOST_WORDS || words.containsKey(cell)) {
      words.merge(cell, 1, Integer::sum);
    }
  }

  /** Place among the fields, from 0. */
  int index() {
    return index;
  }

  String header() {
    return header;
  }

  /** The first cells that are not blank. */
  List<String> examples() {
    return List.copyOf(examples);
  }

  boolean isEmpty() {
    return filled == 0;
  }

  /** Whether its cells are numbers, but for few that say in words that there is none. */
  boolean isNumeric() {
    return numbers > 0
        && words.size() <= MOST_WORDS
        && words.keySet().stream().allMatch(this::saysNone);
  }

  /** The words that stand where there is no number; only where it is numeric. */
  Set<String> missing() {
    return Set.copyOf(words.keySet());
  }

  /** Cells that are not blank and no numbers. */
  long texts() {
    return filled - numbers;
  }

  /** The first cell that is not blank and no number; empty if there is none. */
  Optional<String> firstText() {
    return words.keySet().stream().findFirst();
  }

  /** A word of the trade, or one that comes again among more numbers; never a damaged number. */
  private boolean saysNone(String word) {
    boolean isRepeated = words.getOrDefault(word, 0) > 1 && numbers > texts();
    return NONE.contains(word.toLowerCase(Locale.ROOT))
        || (isRepeated && word.chars().noneMatch(Character::isDigit));
  }

  /** Cells that are not blank. */
  long filled() {
    return filled;
  }

  /** Whether two rows in succession show the same. */
  boolean isRepeating() {
    return isRepeating;
  }

  /** Least number; only where there are numbers. */
  double least() {
    return least;
  }

  /** Greatest number; only where there are numbers. */
  double greatest() {
    return greatest;
  }

  /** What stands in brackets at the end of the header, such as a unit; empty if nothing does. */
  String bracketed() {
    int open = Math.max(header.lastIndexOf('['), header.lastIndexOf('('));
    int close = Math.max(header.lastIndexOf(']'), header.lastIndexOf(')'));
    return open >= 0 && close > open ? header.substring(open + 1, close).strip() : "";
  }
}
