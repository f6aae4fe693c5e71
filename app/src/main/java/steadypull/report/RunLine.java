package steadypull.report;

import java.util.ArrayList;
import java.util.List;
import steadypull.channel.QuantityFormat;
import steadypull.compare.RejectedRun;
import steadypull.compare.Run;
import steadypull.compare.Side;

/** One run in words. */
final class RunLine {
  private RunLine() {}

  /** Side, trip and moment of its onset. */
  static String name(Run run, ReportWords words) {
    return name(run.side(), run.source(), run.onsetSeconds(), words);
  }

  /** The same of one that was left out. */
  static String name(RejectedRun run, ReportWords words) {
    return name(run.side(), run.source(), run.onsetSeconds(), words);
  }

  private static String name(Side side, String source, double onsetSeconds, ReportWords words) {
    String word =
        words.say(
            switch (side) {
              case BEFORE -> "column.before";
              case AFTER -> "column.after";
            });
    return "%s: %s, %s".formatted(word, source, FigureText.minutes(onsetSeconds));
  }

  /** How it began and what it held. */
  static String of(Run run, ComparisonWords comparison) {
    QuantityFormat quantities = comparison.figures().quantities();
    ReportWords words = comparison.words();
    List<String> parts = new ArrayList<>();
    parts.add(DayText.of(run.day(), words));
    run.start().powerKilowatts().ifPresent(power -> parts.add(quantities.power(power)));
    run.start().speedKilometresPerHour().ifPresent(speed -> parts.add(quantities.speed(speed)));
    parts.add(
        words.say("column.held")
            + " "
            + words.say("figure.seconds", Integer.toString(run.heldSeconds())));
    Double began = run.start().temperaturesCelsius().get(comparison.comparison().channel());
    if (began != null) {
      parts.add(words.say("column.start") + " " + quantities.fineTemperature(began));
    }
    run.start()
        .outsideCelsius()
        .ifPresent(
            outside ->
                parts.add(
                    words.say("column.outside") + " " + quantities.outsideTemperature(outside)));
    return String.join(", ", parts);
  }
}
