package steadypull.exchange;

import java.math.BigDecimal;

/**
 * Numbers in cells: what is read, what is refused, what is written. One thread.
 *
 * @param point what parts whole from fraction, {@code .} or {@code ,}
 */
record NumberCell(NumberScan scan, char point) {
  /** Outside of these a plain number would need too many zeros. */
  private static final double LEAST_PLAIN = 1e-7;

  private static final double GREATEST_PLAIN = 1e15;
  private static final long MICROS_PER_SECOND = 1_000_000;

  NumberCell(char point) {
    this(new NumberScan(), point);
  }

  /** Whether the text is a number, of whatever size. */
  boolean accepts(String text) {
    if (point == '.') {
      return scan.accepts(text);
    }
    return text.indexOf('.') < 0 && scan.accepts(text.replace(point, '.'));
  }

  /** The finite value of a cell that is not empty. */
  double value(String cell, CellPlace.Of place) throws TableException {
    String text = cell.strip();
    if (!accepts(text)) {
      throw place
          .here()
          .refusal("a number such as 96" + point + "5", CellPlace.whatIs(text), advice(text));
    }
    double value = scan.value();
    if (!Double.isFinite(value)) {
      throw place.here().refusal("a number up to 1.7e308", CellPlace.quoted(text));
    }
    return value;
  }

  /** The shortest text that reads back as the same value, without a superfluous {@code .0}. */
  static String text(double value) {
    if (value == 0) {
      return "0";
    }
    if (value == (int) value) {
      return Integer.toString((int) value);
    }
    double size = Math.abs(value);
    String shortest = Double.toString(value);
    if (size >= 1e-3 && size < 1e7) {
      return shortest;
    }
    BigDecimal exact = new BigDecimal(shortest).stripTrailingZeros();
    return size >= LEAST_PLAIN && size < GREATEST_PLAIN ? exact.toPlainString() : exact.toString();
  }

  /** Microseconds, 0 or more, as seconds with no more digits than needed. */
  static String seconds(long micros) {
    String whole = Long.toString(micros / MICROS_PER_SECOND);
    long fraction = micros % MICROS_PER_SECOND;
    if (fraction == 0) {
      return whole;
    }
    String digits = Long.toString(MICROS_PER_SECOND + fraction);
    int end = digits.length();
    while (digits.charAt(end - 1) == '0') {
      end--;
    }
    return whole + '.' + digits.substring(1, end);
  }

  private String advice(String text) {
    if (point == '.' && text.matches("[+-]?[0-9]+,[0-9]+")) {
      return " Write a decimal point, not a comma.";
    }
    return point == ',' && text.indexOf('.') >= 0
        ? " The mapping says that a comma parts the fraction."
        : "";
  }
}
