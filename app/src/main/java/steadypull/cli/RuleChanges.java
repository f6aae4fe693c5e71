package steadypull.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import steadypull.advice.AdviceEvent;
import steadypull.channel.QuantityFormat;
import steadypull.drive.Rehearsal;
import steadypull.store.TripSummary;

/** What other rules would have said on recorded trips, beside those in force. One thread. */
final class RuleChanges {
  /** The same rule within so many seconds says the same (our choice). */
  private static final long SAME_MICROS = 30_000_000;

  /** People see so many. */
  private static final int MOST_SHOWN = 50;

  private final List<Change> changes = new ArrayList<>();

  /**
   * Said by one set of rules only.
   *
   * @param trip its id
   * @param said what
   * @param isByFile whether by the rules of the file; else by those in force
   */
  record Change(String trip, AdviceEvent said, boolean isByFile) {}

  /** Takes a trip that was run by both. */
  void add(TripSummary trip, Rehearsal.Rehearsed byFile, Rehearsal.Rehearsed inForce) {
    List<Change> ofTrip = new ArrayList<>();
    byFile.said().stream()
        .filter(each -> isNew(each, inForce.said()))
        .forEach(each -> ofTrip.add(new Change(trip.id(), each, true)));
    inForce.said().stream()
        .filter(each -> isNew(each, byFile.said()))
        .forEach(each -> ofTrip.add(new Change(trip.id(), each, false)));
    ofTrip.sort((left, right) -> Long.compare(left.said().timeMicros(), right.said().timeMicros()));
    changes.addAll(ofTrip);
  }

  private static boolean isNew(AdviceEvent said, List<AdviceEvent> others) {
    return others.stream()
        .noneMatch(
            other ->
                other.rule().equals(said.rule())
                    && other.level().equals(said.level())
                    && Math.abs(other.timeMicros() - said.timeMicros()) <= SAME_MICROS);
  }

  List<Change> changes() {
    return List.copyOf(changes);
  }

  /** A line for each, in the order of the trips. */
  String text(QuantityFormat format) {
    if (changes.isEmpty()) {
      return String.format("%nThe file changes nothing that is said on these trips.%n");
    }
    StringBuilder text = new StringBuilder(String.format("%nWhat the file changes:%n"));
    changes.stream().limit(MOST_SHOWN).forEach(each -> text.append(line(each, format)));
    if (changes.size() > MOST_SHOWN) {
      text.append(String.format("and %d more; --json tells all%n", changes.size() - MOST_SHOWN));
    }
    return text.toString();
  }

  private static String line(Change change, QuantityFormat format) {
    AdviceEvent said = change.said();
    return String.format(
        Locale.ROOT,
        "%s  %s  %s  %s %s %s%s%n",
        change.trip(),
        format.elapsed(said.timeMicros() / 1_000_000),
        change.isByFile() ? "file only " : "now only  ",
        said.level().map(level -> level.word()).orElse(""),
        said.kind().word(),
        said.rule().orElse(""),
        said.kind() == AdviceEvent.Kind.SHELVED ? ": " + said.text() : "");
  }
}
