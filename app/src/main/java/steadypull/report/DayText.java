package steadypull.report;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import steadypull.compare.Run;

/** Days as people write them. */
final class DayText {
  private DayText() {}

  /** From the first to the last day of runs. */
  static String of(List<Run> runs, ReportWords words) {
    List<LocalDate> days = runs.stream().flatMap(run -> run.day().stream()).sorted().toList();
    if (days.isEmpty()) {
      return of(Optional.empty(), words);
    }
    String first = of(Optional.of(days.getFirst()), words);
    String last = of(Optional.of(days.getLast()), words);
    return first.equals(last) ? first : words.say("interval", first, last);
  }

  /** A day in the reader's language, or that it was not told. */
  static String of(Optional<LocalDate> day, ReportWords words) {
    return day.map(
            told ->
                DateTimeFormatter.ofPattern(words.say("day.pattern"), words.locale()).format(told))
        .orElseGet(() -> words.say("report.onUnknownDay"));
  }
}
