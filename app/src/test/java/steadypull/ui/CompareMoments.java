package steadypull.ui;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.compare.Comparison;
import steadypull.compare.Side;
import steadypull.compare.Verdict;
import steadypull.report.ComparisonDesk;
import steadypull.report.ComparisonWords;
import steadypull.report.InventedComparison;
import steadypull.report.ReportException;
import steadypull.store.LinkIdentity;
import steadypull.store.TripDetails;
import steadypull.store.TripSummary;

/** States of the screen that compares runs. */
enum CompareMoments {
  NOTHING_CHOSEN,
  CHOOSING_RUNS,
  CHOOSING_CHANNEL,
  PROVEN,
  PROVEN_COOLANT,
  LIKELY,
  OPEN,
  ONLY_DELAYED,
  NOT_COMPARABLE;

  /** A desk that answers with one comparison. */
  record Desk(Comparison answer, List<Path> written) implements ComparisonDesk {
    Desk(Comparison answer) {
      this(answer, new ArrayList<>());
    }

    @Override
    public List<TripSummary> trips() {
      return List.of(
          trip(5, "after", "second radiator added"),
          trip(4, "after", "tank fitted on Monday"),
          trip(3, "baseline", "repeat, warmer room"),
          trip(2, "baseline", "a note that is far longer than any list has room for, ".repeat(3)));
    }

    @Override
    public Comparison compare(List<Chosen> chosen, Channel channel, Locale locale) {
      return answer;
    }

    @Override
    public void write(ComparisonWords words, QuantityFormat quantities, Path file)
        throws ReportException {
      written.add(file);
    }
  }

  static TripSummary trip(int day, String label, String note) {
    return new TripSummary(
        "2026010" + day + "T120000Z-aaa" + day,
        "origin-" + day,
        "Long-wheelbase van 2",
        Instant.parse("2026-01-0" + day + "T12:00:00Z"),
        Optional.of(ZoneOffset.ofHours(2)),
        2300,
        OptionalDouble.of(47_800),
        93_000,
        List.of(
            Channels.ENGINE_COOLANT_TEMP, Channels.CHARGE_COOLANT_TEMP, Channels.ENGINE_OIL_TEMP),
        List.of(),
        true,
        TripDetails.ofLabel(label).withNote(note),
        "demo",
        LinkIdentity.UNKNOWN,
        "0.0-test");
  }

  private Comparison comparison() {
    InventedComparison proven = InventedComparison.proven();
    return switch (this) {
      case NOTHING_CHOSEN, CHOOSING_RUNS, CHOOSING_CHANNEL, PROVEN -> proven.build();
      case PROVEN_COOLANT -> proven.coolant().build();
      case LIKELY -> proven.verdict(Verdict.LIKELY).runs(2, true).build();
      case OPEN -> InventedComparison.open().build();
      case ONLY_DELAYED ->
          proven
              .verdict(Verdict.NOT_PROVEN)
              .gain(-1.2, 0.2, 1.5)
              .equivalentWithin(2)
              .neverReaches()
              .build();
      case NOT_COMPARABLE -> InventedComparison.untold();
    };
  }

  /** The screen in that state. */
  CompareScreen screen(Locale locale, UnitSystem units) {
    return screen(locale, units, new Desk(comparison()));
  }

  CompareScreen screen(Locale locale, UnitSystem units, Desk answers) {
    Words words = new Words(locale);
    CompareDesk desk = new CompareDesk(answers, words, Runnable::run);
    desk.look();
    CompareScreen screen =
        new CompareScreen(
            words,
            new QuantityFormat(locale, units),
            desk,
            new CompareScreen.Ways(name -> Optional.of(Path.of(name + ".pdf")), () -> {}));
    if (this != NOTHING_CHOSEN) {
      List<TripSummary> trips = desk.model().tripsProperty().get();
      desk.model().toggle(trips.get(3), Side.BEFORE);
      desk.model().toggle(trips.get(0), Side.AFTER);
      desk.compare();
    }
    switch (this) {
      case CHOOSING_RUNS -> screen.openRuns();
      case CHOOSING_CHANNEL -> screen.openChannels();
      default -> {
        // what was compared is shown
      }
    }
    return screen;
  }
}
