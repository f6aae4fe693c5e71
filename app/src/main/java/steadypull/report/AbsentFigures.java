package steadypull.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import steadypull.compare.Comparison;
import steadypull.compare.SideFigures;

/** Why figures are absent of a comparison that tells others. Stateless. */
final class AbsentFigures {
  private AbsentFigures() {}

  /** Sentences; none of a comparison of which nothing is told, whose own caveats say why. */
  static List<String> of(Comparison comparison, ReportWords words) {
    List<String> absent = new ArrayList<>();
    if (comparison.settledGain().isEmpty()) {
      return absent;
    }
    if (comparison.limitCelsius().isEmpty()) {
      absent.add(words.say("absent.limit"));
    } else {
      time(comparison, comparison.before(), "absent.before", absent, words);
      time(comparison, comparison.after(), "absent.after", absent, words);
    }
    if (comparison.equivalentWithin().isEmpty()) {
      absent.add(words.say("absent.equivalent"));
    }
    return absent;
  }

  private static void time(
      Comparison comparison, SideFigures side, String key, List<String> absent, ReportWords words) {
    if (side.secondsToLimit().isPresent()) {
      return;
    }
    OptionalDouble settles = DayWords.settlesCelsius(comparison, side);
    boolean isUnder =
        settles.isPresent() && settles.getAsDouble() < comparison.limitCelsius().getAsDouble();
    absent.add(words.say(isUnder ? key + ".never" : key));
  }
}
