package steadypull.exchange;

import java.util.ArrayList;
import java.util.List;

/** What the first rows of a foreign table show of one column. One thread. */
final class ColumnGlance {
  /** Cells that are kept to tell the form of a time. */
  private static final int MOST_EXAMPLES = 200;

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

  boolean isNumeric() {
    return filled > 0 && numbers == filled;
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
