package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.adapter.LinkState;
import steadypull.store.TripEntry;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;

/** What a live drive sees in which order is what its replay sees. */
class OrderOfArrivalTest {
  private static final LinkState SEARCHING = new LinkState.Searching("adapter");
  private static final LinkState CONNECTED =
      new LinkState.Connected("adapter", "CAN", "", List.of("01.05", "01.0C", "01.0D"));

  @TempDir private Path folder;

  private final Heard live = new Heard();
  private final Heard replayed = new Heard();

  /** A sign of life comes between the last byte of an answer and the prompt behind it. */
  @Test
  void anAnswerOvertakenByASignOfLifeIsReplayedWhereItWasHeard() throws Exception {
    long seed = 77;
    Random random = new Random(seed);
    try (TripLibrary library = TripLibrary.open(folder)) {
      DriveLog log = log(library);
      log.take(new Arrival.LinkChanged(SEARCHING, DriveLogs.at(1)));
      log.take(DriveLogs.heard("01.0D", 0, 2));
      log.take(new Arrival.LinkChanged(CONNECTED, DriveLogs.at(2)));
      for (double second = 2.1; second < 90; second += 0.05) {
        if (random.nextInt(4) == 0) {
          log.take(new Arrival.LinkChanged(CONNECTED, DriveLogs.at(second + 0.06)));
        }
        log.take(DriveLogs.heard("01.05", 85 + second / 10, second));
      }
      replay(library, log.end().tripId().orElseThrow());
    }

    assertThat(replayed.entries).as("seed %d", seed).isEqualTo(live.entries);
    assertThat(live.entries)
        .filteredOn(TripEntry.OfSample.class::isInstance)
        .extracting(entry -> ((TripEntry.OfSample) entry).sample().timeMicros())
        .isSorted();
    assertThat(summary(replayed)).isEqualTo(summary(live));
  }

  // The reader learns lengths, and so reads, before it says that it is connected.
  @Test
  void aTripThatBeginsWhileSearchingKnowsItsChannelsOnceConnected() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      DriveLog log = log(library);
      log.take(new Arrival.LinkChanged(SEARCHING, DriveLogs.at(1)));
      log.take(DriveLogs.heard("01.05", 85, 2));
      log.take(new Arrival.LinkChanged(SEARCHING, DriveLogs.at(2.9)));
      log.take(DriveLogs.heard("01.0C", 1800, 3.5));
      log.take(new Arrival.LinkChanged(CONNECTED, DriveLogs.at(3.6)));
      log.take(DriveLogs.heard("01.0D", 80, 4.5));
      log.take(new Arrival.LinkChanged(CONNECTED, DriveLogs.at(5.4)));
      replay(library, log.end().tripId().orElseThrow());
    }

    assertThat(live.entries)
        .filteredOn(TripEntry.OfEvent.class::isInstance)
        .extracting(entry -> ((TripEntry.OfEvent) entry).event().kind())
        .as("repetitions are no entries")
        .containsExactly(TripEvent.Kind.LINK, TripEvent.Kind.LINK);
    assertThat(live.last().link().state()).isEqualTo(LinkSummary.State.CONNECTED);
    assertThat(live.last().link().freshChannels()).isEqualTo(3);
    assertThat(live.last().link().expectedChannels())
        .as("computed channels are not heard")
        .isEqualTo(3);
    assertThat(summary(replayed)).isEqualTo(summary(live));
  }

  /** The reader asks once more while it is being closed. */
  @Test
  void codesToldAtTheEndBelongToTheTripAndThoseOfLongAfterDoNot() throws Exception {
    String none = "{\"status\":\"stored\",\"told_by\":[\"7E8\"],\"codes\":[]}";
    String some =
        "{\"status\":\"stored\",\"told_by\":[\"7E8\"],\"codes\":[{\"code\":\"P0299\",\"control_unit\":\"7E8\"}]}";
    try (TripLibrary library = TripLibrary.open(folder)) {
      DriveLog log = log(library);
      log.take(codes(none, 1));
      log.take(DriveLogs.heard("01.05", 85, 2));
      log.take(codes(none, 3));
      log.take(codes(none, 63));
      log.take(DriveLogs.heard("01.05", 90, 64));
      log.takeLast(codes(some, 65));
      log.takeLast(codes(none, 120));
      replay(library, log.end().tripId().orElseThrow());
    }

    assertThat(live.entries)
        .filteredOn(TripEntry.OfEvent.class::isInstance)
        .extracting(entry -> ((TripEntry.OfEvent) entry).event())
        .filteredOn(event -> event.kind() == TripEvent.Kind.CODES)
        .as("told before the first reading, told again, and told long after are left out")
        .containsExactly(
            new TripEvent(1_000_000, TripEvent.Kind.CODES, none),
            new TripEvent(62_000_000, TripEvent.Kind.CODES, some));
    assertThat(replayed.entries).isEqualTo(live.entries);
  }

  private static Arrival.Diagnosed codes(String detail, double seconds) {
    return new Arrival.Diagnosed(TripEvent.Kind.CODES, "STORED", detail, DriveLogs.at(seconds));
  }

  private DriveLog log(TripLibrary library) throws Exception {
    return DriveLogs.log(library, DriveEnd.never(), live);
  }

  private void replay(TripLibrary library, String trip) throws Exception {
    new Replay(DemoDrives.ENGLISH.setup(library.vehicleOf(trip), false), replayed)
        .run(library, library.find(trip));
  }

  /** Link lines of the seconds of the trip; before it began nothing is repeated. */
  private static List<LinkSummary> summary(Heard heard) {
    List<LinkSummary> all = heard.seconds.stream().map(DriveSnapshot::link).toList();
    int before = heard.seconds.size();
    for (int i = 1; i < heard.seconds.size(); i++) {
      before = heard.seconds.get(i).timeMicros() <= heard.seconds.get(i - 1).timeMicros() ? i : 0;
      if (before > 0) {
        return all.subList(before, all.size());
      }
    }
    return all;
  }
}
