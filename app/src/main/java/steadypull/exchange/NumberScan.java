package steadypull.exchange;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Reads one number after another as table cells hold them: a sign perhaps, decimal digits, a point,
 * perhaps an exponent of at most four digits. One thread.
 *
 * <p>Numbers of at most 15 digits and a power of ten up to 22 are converted by one division or
 * multiplication of two exact doubles, which rounds correctly (Clinger, "How to Read Floating Point
 * Numbers Accurately", PLDI 1990, section 3; from memory); others by the language's own parser.
 */
final class NumberScan {
  /** Longer than any number that a program writes, short enough for any number to be cheap. */
  private static final int LONGEST = 400;

  private static final int EXACT_DIGITS = 15;
  private static final int LONGEST_EXPONENT = 4;
  private static final double[] POWERS = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22
  };
  private static final int FINEST = 18;

  private String text = "";
  private int at;
  private boolean isNegative;
  private long digits;
  private int digitCount;
  private int significant;
  private int power;

  /** Whether the text is such a number; if so, the other methods tell of it. */
  boolean accepts(String number) {
    text = number;
    at = 0;
    digits = 0;
    digitCount = 0;
    significant = 0;
    power = 0;
    if (text.isEmpty() || text.length() > LONGEST) {
      return false;
    }
    isNegative = text.charAt(0) == '-';
    at = isNegative || text.charAt(0) == '+' ? 1 : 0;
    readDigits(false);
    if (at < text.length() && text.charAt(at) == '.') {
      at++;
      readDigits(true);
    }
    return digitCount > 0 && readExponent() && at == text.length();
  }

  /** The value; infinite if it is too great for a double. */
  double value() {
    if (significant <= EXACT_DIGITS && Math.abs(power) < POWERS.length) {
      double size = power < 0 ? digits / POWERS[-power] : digits * POWERS[power];
      return isNegative ? -size : size;
    }
    return Double.parseDouble(text);
  }

  /** The value times a power of ten, rounded to the nearest, to the even one of two as near. */
  long scaled(int tens) {
    int shift = power + tens;
    if (significant <= EXACT_DIGITS && shift >= 0 && significant + shift <= FINEST) {
      long size = digits * (long) POWERS[shift];
      return isNegative ? -size : size;
    }
    return new BigDecimal(text)
        .movePointRight(tens)
        .setScale(0, RoundingMode.HALF_EVEN)
        .longValueExact();
  }

  private void readDigits(boolean isFraction) {
    for (; at < text.length(); at++) {
      int digit = text.charAt(at) - '0';
      if (digit < 0 || digit > 9) {
        return;
      }
      digitCount++;
      power -= isFraction ? 1 : 0;
      if (significant > 0 || digit > 0) {
        significant++;
        digits = significant <= EXACT_DIGITS ? digits * 10 + digit : digits;
      }
    }
  }

  private boolean readExponent() {
    if (at == text.length() || (text.charAt(at) | 0x20) != 'e') {
      return true;
    }
    at++;
    int sign = at < text.length() && text.charAt(at) == '-' ? -1 : 1;
    at += at < text.length() && (text.charAt(at) == '-' || text.charAt(at) == '+') ? 1 : 0;
    int first = at;
    int exponent = 0;
    while (at < text.length()
        && at - first < LONGEST_EXPONENT
        && text.charAt(at) >= '0'
        && text.charAt(at) <= '9') {
      exponent = exponent * 10 + text.charAt(at++) - '0';
    }
    power += sign * exponent;
    return at > first;
  }
}
