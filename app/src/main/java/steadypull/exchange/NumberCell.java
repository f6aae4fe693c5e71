package steadypull.exchange;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Pattern;

/** Numbers as table cells hold them: decimal digits, a point, perhaps an exponent. */
final class NumberCell {
  /** Longer than any number that a program writes, short enough for any number to be cheap. */
  private static final int LONGEST = 400;

  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][+-]?[0-9]{1,4})?");

  /** Outside of these a plain number would need too many zeros. */
  private static final double LEAST_PLAIN = 1e-7;

  private static final double GREATEST_PLAIN = 1e15;
  private static final int MICROS_DIGITS = 6;

  /** A trip lasts at most a year; a greater time is a clock's, not a trip's. */
  private static final double LONGEST_TRIP_SECONDS = 366 * 86_400.0;

  private NumberCell() {}

  /** The finite value of a cell that is not empty. */
  static double value(String cell, CellPlace place) throws TableException {
    String text = cell.strip();
    if (text.length() > LONGEST || !NUMBER.matcher(text).matches()) {
      throw place.refusal("a number such as 96.5", whatIs(text), commaAdvice(text));
    }
    double value = Double.parseDouble(text);
    if (!Double.isFinite(value)) {
      throw place.refusal("a number up to 1.7e308", CellPlace.quoted(text));
    }
    return value;
  }

  /** The time of a cell in microseconds, rounded to the nearest. */
  static long micros(String cell, CellPlace place) throws TableException {
    double seconds = value(cell, place);
    if (seconds < 0) {
      throw place.refusal("seconds since the start of the trip, 0 or more", whatIs(cell.strip()));
    }
    if (seconds > LONGEST_TRIP_SECONDS) {
      throw place.refusal(
          "seconds since the start of the trip, at most a year",
          whatIs(cell.strip()),
          " A time of the clock must be turned into seconds since the start.");
    }
    if (seconds < LEAST_PLAIN) {
      return 0;
    }
    return new BigDecimal(cell.strip())
        .movePointRight(MICROS_DIGITS)
        .setScale(0, RoundingMode.HALF_EVEN)
        .longValueExact();
  }

  /** The shortest text that reads back as the same value, without a superfluous {@code .0}. */
  static String text(double value) {
    if (value == 0) {
      return "0";
    }
    BigDecimal shortest = new BigDecimal(Double.toString(value)).stripTrailingZeros();
    double size = Math.abs(value);
    return size >= LEAST_PLAIN && size < GREATEST_PLAIN
        ? shortest.toPlainString()
        : shortest.toString();
  }

  /** Microseconds as seconds, with no more digits than needed. */
  static String seconds(long micros) {
    return BigDecimal.valueOf(micros, MICROS_DIGITS).stripTrailingZeros().toPlainString();
  }

  private static String whatIs(String text) {
    if (text.indexOf('\uFFFD') >= 0) {
      return "bytes that are not UTF-8";
    }
    if (text.indexOf('\0') >= 0) {
      return "a NUL character in " + CellPlace.quoted(text);
    }
    return CellPlace.quoted(text);
  }

  private static String commaAdvice(String text) {
    return text.matches("[+-]?[0-9]+,[0-9]+") ? " Write a decimal point, not a comma." : "";
  }
}
