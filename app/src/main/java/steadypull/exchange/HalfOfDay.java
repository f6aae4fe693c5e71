package steadypull.exchange;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The half of the day in 12-hour times, in whatever way programs write AM and PM. Stateless. */
final class HalfOfDay {
  /** Also with points, and with the blanks that must not break a line (U+00A0, U+202F). */
  static final String WRITTEN = "[\\s\\u00A0\\u202F]*([AaPp])\\.?\\s?[Mm]\\.?";

  private static final Pattern AT_END = Pattern.compile(WRITTEN + "$");

  private HalfOfDay() {}

  /** A cell as its pattern has it: with AM or PM behind a blank, or behind none. */
  static String plain(String cell, String pattern) {
    if (!pattern.endsWith("a")) {
      return cell;
    }
    Matcher half = AT_END.matcher(cell);
    String blank = pattern.endsWith(" a") ? " " : "";
    return half.find()
        ? cell.substring(0, half.start()) + blank + half.group(1).toUpperCase(Locale.ROOT) + "M"
        : cell;
  }
}
