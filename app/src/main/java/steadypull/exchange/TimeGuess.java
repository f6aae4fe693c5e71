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
 * @param format as in a mapping
 * @param comment what is uncertain; may be empty
 * @param lacksDay whether the cells tell a time of day only
 * @param isFarFromZero whether a counter does not begin near zero
 */
record TimeGuess(
    ColumnGlance column, String format, String comment, boolean lacksDay, boolean isFarFromZero) {
  private static final List<String> WORDS =
      List.of("time", "timestamp", "zeit", "uhrzeit", "zeitstempel", "datum", "date", "clock");
  private static final Set<String> UNITS =
      Set.of("s", "sec", "secs", "seconds", "ms", "msec", "millis", "milliseconds");
  private static final Pattern ISO = Pattern.compile("\\d{4}-\\d\\d-\\d\\d[Tt ]\\d\\d:\\d\\d.*");
  private static final Pattern CLOCK =
      Pattern.compile("(\\d{1,2}):\\d\\d:\\d\\d(?:([.,])(\\d{1,9}))?");
  private static final Pattern DATED =
      Pattern.compile(
          "(\\d{1,4})([./-])(\\d{1,2})[./-](\\d{1,4})["
              + " T](\\d{1,2}):\\d\\d:\\d\\d(?:([.,])(\\d{1,9}))?");

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
        .or(() -> columns.stream().limit(1).flatMap(each -> guess(each).stream()).findFirst());
  }

  private static Optional<TimeGuess> guess(ColumnGlance column) {
    if (column.isEmpty()) {
      return Optional.empty();
    }
    if (column.isNumeric() && column.missing().isEmpty()) {
      return Optional.of(counted(column));
    }
    if (all(column, ISO)) {
      return Optional.of(new TimeGuess(column, "iso-8601", "", false, false));
    }
    if (all(column, CLOCK)) {
      return Optional.of(
          new TimeGuess(column, "H:mm:ss" + fraction(column, CLOCK, 2), "", true, false));
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
      return new TimeGuess(column, "epoch-milliseconds", "", false, false);
    }
    if (column.greatest() > LEAST_EPOCH_SECONDS && !unit.equals("ms")) {
      return new TimeGuess(column, "epoch-seconds", "", false, false);
    }
    boolean isMillis =
        unit.startsWith("ms")
            || unit.startsWith("milli")
            || (unit.isEmpty() && hasLongSteps(column));
    String comment =
        unit.isEmpty() ? "check: the header tells no unit, its steps look like this one" : "";
    double firstSeconds = column.least() / (isMillis ? 1000 : 1);
    return new TimeGuess(
        column, isMillis ? "milliseconds" : "seconds", comment, false, firstSeconds > FAR_SECONDS);
  }

  /** Readings of a vehicle come more often than every ten seconds. */
  private static boolean hasLongSteps(ColumnGlance column) {
    return column.filled() > 1
        && (column.greatest() - column.least()) / (column.filled() - 1) >= 10;
  }

  private static TimeGuess dated(ColumnGlance column) {
    OptionalInt first = greatest(column, 1);
    OptionalInt middle = greatest(column, 3);
    Matcher any = matched(column.examples().getFirst(), DATED);
    String parted = any.group(2);
    String day;
    String comment = "";
    if (first.orElse(0) > 31) {
      day = "uuuu" + parted + "M" + parted + "d";
    } else if (middle.orElse(0) > 12) {
      day = "M" + parted + "d" + parted + "uuuu";
    } else {
      day = "d" + parted + "M" + parted + "uuuu";
      boolean isOpen = first.orElse(0) <= 12 && !parted.equals(".");
      comment = isOpen ? "check: day and month may be the other way round" : "";
    }
    String between = column.examples().getFirst().contains("T") ? "'T'" : " ";
    return new TimeGuess(
        column, day + between + "H:mm:ss" + fraction(column, DATED, 6), comment, false, false);
  }

  private static OptionalInt greatest(ColumnGlance column, int group) {
    return column.examples().stream()
        .mapToInt(cell -> Integer.parseInt(matched(cell, DATED).group(group)))
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
