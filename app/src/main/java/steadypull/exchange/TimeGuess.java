package steadypull.exchange;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The guess which column tells the time, and how.
 *
 * @param dateColumn tells the day, if a column of its own does
 * @param format as in a mapping
 * @param comment what is uncertain; may be empty
 * @param lacksDay whether the cells tell a time of day only
 * @param isLocal whether the cells are local times that tell no zone
 * @param isFarFromZero whether a counter does not begin near zero
 */
record TimeGuess(
    ColumnGlance column,
    Optional<ColumnGlance> dateColumn,
    String format,
    String comment,
    boolean lacksDay,
    boolean isLocal,
    boolean isFarFromZero) {
  private static final List<String> WORDS =
      List.of("time", "timestamp", "zeit", "uhrzeit", "zeitstempel", "datum", "date", "clock");
  private static final Set<String> UNITS =
      Set.of("s", "sec", "secs", "seconds", "ms", "msec", "millis", "milliseconds");
  private static final Pattern ISO = Pattern.compile("\\d{4}-\\d\\d-\\d\\d[Tt ]\\d\\d:\\d\\d.*");
  private static final Pattern CLOCK =
      Pattern.compile(
          "(\\d{1,2}):\\d\\d:\\d\\d(?:([.,])(\\d{1,9}))?(?:" + HalfOfDay.WRITTEN + ")?");
  private static final String DAY = "(\\d{1,4})([./-])(\\d{1,2})[./-](\\d{1,4})";
  private static final Pattern DATE = Pattern.compile(DAY);
  private static final Pattern DATED =
      Pattern.compile(
          DAY + "[ T](\\d{1,2}):\\d\\d:\\d\\d(?:([.,])(\\d{1,9}))?(?:" + HalfOfDay.WRITTEN + ")?");
  private static final Pattern ZONED = Pattern.compile(".*(?:[Zz]|[+-]\\d\\d(?::?\\d\\d)?)");

  /** The year 1985 in seconds: greater numbers count from 1970. */
  private static final double LEAST_EPOCH_SECONDS = 5e8;

  private static final double LEAST_EPOCH_MILLISECONDS = 1e11;

  /** A counter that begins later than this, in seconds, did not begin with the trip. */
  private static final double FAR_SECONDS = 60;

  /** The guess for a table, or empty if no column looks like a time. */
  static Optional<TimeGuess> of(List<ColumnGlance> columns) {
    List<ColumnGlance> named =
        columns.stream()
            .filter(each -> ChannelWords.words(each.header()).stream().anyMatch(WORDS::contains))
            .toList();
    return named.stream()
        .flatMap(each -> guess(each).stream())
        .findFirst()
        .or(() -> columns.stream().limit(1).flatMap(each -> guess(each).stream()).findFirst())
        .map(guess -> guess.lacksDay() ? guess.withDateOf(columns) : guess);
  }

  /** Whether that column belongs to the time. */
  boolean tells(ColumnGlance other) {
    return other == column || dateColumn.filter(each -> each == other).isPresent();
  }

  /** The same with the day of the first column that holds nothing but days, if there is one. */
  private TimeGuess withDateOf(List<ColumnGlance> columns) {
    Optional<ColumnGlance> date =
        columns.stream().filter(each -> !each.isEmpty() && all(each, DATE)).findFirst();
    return date.isEmpty()
        ? this
        : new TimeGuess(
            column,
            date,
            day(date.get(), DATE) + " " + format,
            dayComment(date.get(), DATE),
            false,
            true,
            false);
  }

  private static TimeGuess of(ColumnGlance column, String format, String comment) {
    return new TimeGuess(column, Optional.empty(), format, comment, false, false, false);
  }

  private static Optional<TimeGuess> guess(ColumnGlance column) {
    if (column.isEmpty()) {
      return Optional.empty();
    }
    if (column.isNumeric() && column.missing().isEmpty()) {
      return Optional.of(counted(column));
    }
    if (all(column, ISO)) {
      boolean isLocal = !all(column, ZONED);
      return Optional.of(
          new TimeGuess(column, Optional.empty(), "iso-8601", "", false, isLocal, false));
    }
    if (all(column, CLOCK)) {
      return Optional.of(
          new TimeGuess(column, Optional.empty(), clock(column, CLOCK, 1), "", true, true, false));
    }
    return all(column, DATED) ? Optional.of(dated(column)) : Optional.empty();
  }

  private static boolean all(ColumnGlance column, Pattern pattern) {
    return column.examples().stream().allMatch(cell -> pattern.matcher(cell).matches());
  }

  private static TimeGuess counted(ColumnGlance column) {
    String unit =
        HeaderUnit.of(column, word -> UNITS.contains(word.toLowerCase(Locale.ROOT)))
            .unit()
            .toLowerCase(Locale.ROOT);
    if (column.greatest() > LEAST_EPOCH_MILLISECONDS) {
      return of(column, "epoch-milliseconds", "");
    }
    if (column.greatest() > LEAST_EPOCH_SECONDS && !unit.equals("ms")) {
      return of(column, "epoch-seconds", "");
    }
    boolean isMillis =
        unit.startsWith("ms")
            || unit.startsWith("milli")
            || (unit.isEmpty() && hasLongSteps(column));
    String comment =
        unit.isEmpty() ? "check: the header tells no unit, its steps look like this one" : "";
    double firstSeconds = column.least() / (isMillis ? 1000 : 1);
    return new TimeGuess(
        column,
        Optional.empty(),
        isMillis ? "milliseconds" : "seconds",
        comment,
        false,
        false,
        firstSeconds > FAR_SECONDS);
  }

  /** Readings of a vehicle come more often than every ten seconds. */
  private static boolean hasLongSteps(ColumnGlance column) {
    return column.filled() > 1
        && (column.greatest() - column.least()) / (column.filled() - 1) >= 10;
  }

  private static TimeGuess dated(ColumnGlance column) {
    String between = column.examples().getFirst().contains("T") ? "'T'" : " ";
    return new TimeGuess(
        column,
        Optional.empty(),
        day(column, DATED) + between + clock(column, DATED, 5),
        dayComment(column, DATED),
        false,
        true,
        false);
  }

  /** The pattern of the day in the first groups of cells. */
  private static String day(ColumnGlance column, Pattern pattern) {
    String parted = matched(column.examples().getFirst(), pattern).group(2);
    if (greatest(column, pattern, 1).orElse(0) > 31) {
      return "uuuu" + parted + "M" + parted + "d";
    }
    return greatest(column, pattern, 3).orElse(0) > 12 || isMonthFirst(column, pattern)
        ? "M" + parted + "d" + parted + "uuuu"
        : "d" + parted + "M" + parted + "uuuu";
  }

  /** Slashes with hours of 12 are written where the month comes first (common practice). */
  private static boolean isMonthFirst(ColumnGlance column, Pattern pattern) {
    return isOpen(column, pattern)
        && matched(column.examples().getFirst(), pattern).group(2).equals("/")
        && isOfHalfDays(column);
  }

  private static String dayComment(ColumnGlance column, Pattern pattern) {
    return isOpen(column, pattern) ? "check: day and month may be the other way round" : "";
  }

  /** Whether day and month could each be either. */
  private static boolean isOpen(ColumnGlance column, Pattern pattern) {
    return greatest(column, pattern, 1).orElse(0) <= 12
        && greatest(column, pattern, 3).orElse(0) <= 12
        && !matched(column.examples().getFirst(), pattern).group(2).equals(".");
  }

  /** The pattern of the time of day whose hour is that group of cells. */
  private static String clock(ColumnGlance column, Pattern pattern, int hourGroup) {
    String fraction = fraction(column, pattern, hourGroup + 1);
    if (!isOfHalfDays(column)) {
      return "H:mm:ss" + fraction;
    }
    boolean isParted = column.examples().getFirst().matches(".*\\d[\\s\\u00A0\\u202F]+\\D.*");
    return "h:mm:ss" + fraction + (isParted ? " a" : "a");
  }

  private static boolean isOfHalfDays(ColumnGlance column) {
    return column.examples().getFirst().matches(".*[Mm]\\.?");
  }

  private static OptionalInt greatest(ColumnGlance column, Pattern pattern, int group) {
    return column.examples().stream()
        .mapToInt(cell -> Integer.parseInt(matched(cell, pattern).group(group)))
        .max();
  }

  /** The pattern of a fraction; several, each optional, where cells have more or fewer digits. */
  private static String fraction(ColumnGlance column, Pattern pattern, int pointGroup) {
    List<String> forms =
        column.examples().stream()
            .map(cell -> matched(cell, pattern))
            .map(cell -> cell.group(pointGroup) == null ? "" : fraction(cell, pointGroup))
            .distinct()
            .toList();
    if (forms.size() == 1) {
      return forms.getFirst();
    }
    return forms.stream()
        .filter(form -> !form.isEmpty())
        .sorted((one, other) -> Integer.compare(other.length(), one.length()))
        .map(form -> "[" + form + "]")
        .collect(Collectors.joining());
  }

  private static String fraction(Matcher cell, int pointGroup) {
    return cell.group(pointGroup) + "S".repeat(cell.group(pointGroup + 1).length());
  }

  private static Matcher matched(String cell, Pattern pattern) {
    Matcher matcher = pattern.matcher(cell);
    if (!matcher.matches()) {
      throw new IllegalArgumentException("Expected a time, found " + cell);
    }
    return matcher;
  }
}
