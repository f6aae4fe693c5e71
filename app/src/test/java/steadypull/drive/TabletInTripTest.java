package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.adapter.LinkState;
import steadypull.adapter.link.LinkSource;
import steadypull.adapter.link.TcpLinks;
import steadypull.store.TripEntry;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.tablet.TabletNews;

/** Stories of tablets whose battery, clock or sleep meets a trip. */
class TabletInTripTest {
  private static final LinkState CONNECTED =
      new LinkState.Connected("adapter", "CAN", "", List.of("01.05", "01.0C", "01.0D"));
  private static final TabletNews LOW = new TabletNews.BatteryUnder(10, 9);
  private static final TabletNews EMPTY = new TabletNews.BatteryNearlyEmpty(5);

  @TempDir private Path folder;

  private final Heard live = new Heard();
  private final Told told = new Told();
  private TripLibrary library;
  private DriveLog log;

  @BeforeEach
  void openLog() throws Exception {
    library = TripLibrary.open(folder);
    log = DriveLogs.log(library, realPort(), DriveEnd.never(), told);
  }

  @AfterEach
  void closeLibrary() {
    library.close();
  }

  /** A port of this machine, which lives in its time; nobody opens it. */
  private static LinkSource realPort() throws Exception {
    return new TcpLinks().find("tcp://127.0.0.1:9").orElseThrow();
  }

  private void driveFrom(int from, int until) {
    log.take(new Arrival.LinkChanged(CONNECTED, DriveLogs.at(from)));
    for (int second = from; second < until; second++) {
      log.take(DriveLogs.heard("01.0C", 1800, second));
      log.take(DriveLogs.heard("01.05", 85, second));
    }
  }

  private void tell(TabletNews news, double second) {
    log.take(new Arrival.TabletTold(news, DriveLogs.at(second)));
  }

  private List<TripEvent> kept(String trip, TripEvent.Kind kind) throws Exception {
    List<TripEvent> events = new ArrayList<>();
    library.replay(
        trip,
        entry -> {
          if (entry instanceof TripEntry.OfEvent(TripEvent event) && event.kind() == kind) {
            events.add(event);
          }
        });
    return events;
  }

  private static List<TabletNews> news(List<TripEvent> events) {
    return events.stream().map(TabletText::news).flatMap(Optional::stream).toList();
  }

  @Test
  void batteryAndChargerAreKeptWithTheTripAndShownWhileTheyMatter() throws Exception {
    driveFrom(0, 10);
    tell(new TabletNews.OnBattery(63), 9.5);
    driveFrom(10, 60);
    assertThat(live.last().tablet()).contains(new TabletNews.OnBattery(63));
    driveFrom(60, 80);
    assertThat(live.last().tablet()).as("after a minute").isEmpty();
    tell(LOW, 79.5);
    driveFrom(80, 300);
    assertThat(live.last().tablet()).as("as long as it is low").contains(LOW);
    tell(new TabletNews.Charging(9), 299.5);
    driveFrom(300, 310);
    assertThat(live.last().tablet()).contains(new TabletNews.Charging(9));

    String trip = log.end().tripId().orElseThrow();
    List<TripEvent> events = kept(trip, TripEvent.Kind.TABLET);
    assertThat(news(events))
        .containsExactly(new TabletNews.OnBattery(63), LOW, new TabletNews.Charging(9));
    assertThat(events.getFirst().timeMicros()).isEqualTo(9_500_000);
    assertThat(events.get(1).detail())
        .contains("\"under_pct\":10", "\"battery_pct\":9", "Connect the charger.");
  }

  @Test
  void aTripIsSealedBeforeTheTabletDiesAndRecordingGoesOn() throws Exception {
    driveFrom(0, 100);
    tell(EMPTY, 99.5);
    assertThat(told.ended)
        .singleElement()
        .extracting(EndedTrip::cause)
        .isEqualTo(EndedTrip.Cause.BATTERY_NEARLY_EMPTY);
    TripSummary first = library.find(told.ended.getFirst().tripId());
    assertThat(first.sealed()).isTrue();
    assertThat(first.durationSeconds()).isEqualTo(99.5);
    assertThat(news(kept(first.id(), TripEvent.Kind.TABLET))).containsExactly(EMPTY);

    driveFrom(100, 130);
    DriveOutcome outcome = log.end();

    assertThat(outcome.earlierTripIds()).containsExactly(first.id());
    TripSummary second = library.find(outcome.tripId().orElseThrow());
    assertThat(second.start()).isEqualTo(DemoDrives.START.plusSeconds(100));
    assertThat(news(kept(second.id(), TripEvent.Kind.TABLET)))
        .as("the other trip says of itself how the battery stands")
        .containsExactly(EMPTY);
    assertThat(live.last().tablet()).contains(EMPTY);
  }

  @Test
  void anEmptyBatteryBeforeTheFirstReadingEndsNothing() throws Exception {
    tell(EMPTY, 1);
    driveFrom(2, 30);

    assertThat(told.ended).isEmpty();
    assertThat(news(kept(log.end().tripId().orElseThrow(), TripEvent.Kind.TABLET)))
        .containsExactly(EMPTY);
  }

  @Test
  void aClockThatIsSetIsKeptAndLeavesTheTripsTimesAsTheyAre() throws Exception {
    driveFrom(0, 50);
    Instant from = DemoDrives.START.plusSeconds(50);
    TabletNews set = new TabletNews.ClockSet(from, from.minusSeconds(3600), false);
    tell(set, 50);
    driveFrom(50, 100);
    assertThat(live.last().clock())
        .as("the driver sees what the tablet's clock shows")
        .isEqualTo(DemoDrives.START.plusSeconds(99 - 3600));
    assertThat(live.last().timeMicros()).isEqualTo(99_000_000);

    TripSummary trip = library.find(log.end().tripId().orElseThrow());

    assertThat(trip.start()).isEqualTo(DemoDrives.START);
    assertThat(trip.durationSeconds()).isEqualTo(99);
    assertThat(trip.gaps()).isEmpty();
    List<TripEvent> events = kept(trip.id(), TripEvent.Kind.CLOCK);
    assertThat(news(events)).containsExactly(set);
    assertThat(events.getFirst().detail())
        .contains(
            "\"from\":\"2026-07-15T17:46:02Z\"",
            "\"to\":\"2026-07-15T16:46:02Z\"",
            "\"by_s\":-3600.0",
            "back by 1:00:00");
  }

  @Test
  void theNextTripBeginsByTheClockThatWasSet() throws Exception {
    driveFrom(0, 50);
    Instant from = DemoDrives.START.plusSeconds(50);
    tell(new TabletNews.ClockSet(from, from.plusSeconds(600), false), 50);
    tell(EMPTY, 51);
    driveFrom(60, 70);

    TripSummary next = library.find(log.end().tripId().orElseThrow());
    assertThat(next.start()).isEqualTo(DemoDrives.START.plusSeconds(660));
  }

  // The link's clock stands while Linux sleeps: without this the coolant would cool in no time.
  @Test
  void aSleepThatTheLinksClockMissedShowsAsAGap() throws Exception {
    driveFrom(0, 50);
    tell(new TabletNews.Slept(Duration.ofMinutes(12), true), 50);
    driveFrom(51, 100);

    TripSummary trip = library.find(log.end().tripId().orElseThrow());

    assertThat(trip.durationSeconds()).isEqualTo(99 + 720);
    assertThat(trip.gaps())
        .singleElement()
        .satisfies(
            gap -> {
              assertThat(gap.fromSeconds()).isEqualTo(49);
              assertThat(gap.toSeconds()).isEqualTo(51 + 720);
            });
    assertThat(told.reports)
        .extracting(TabletReport::sentence)
        .anyMatch(s -> s.contains("0:12:00"));
  }

  @Test
  void aSleepThatTheLinksClockSawMovesNothing() throws Exception {
    driveFrom(0, 50);
    tell(new TabletNews.Slept(Duration.ofSeconds(40), false), 90);
    driveFrom(90, 100);

    TripSummary trip = library.find(log.end().tripId().orElseThrow());
    assertThat(trip.durationSeconds()).isEqualTo(99);
    assertThat(trip.gaps()).hasSize(1);
  }

  // A simulated vehicle lives in a time of its own, which sleeps with the tablet.
  @Test
  void aSimulatedDriveSleepsWithItsTablet() throws Exception {
    log = DriveLogs.log(library, DriveEnd.never(), told);
    driveFrom(0, 50);
    tell(new TabletNews.Slept(Duration.ofMinutes(12), true), 50);
    driveFrom(51, 100);

    TripSummary trip = library.find(log.end().tripId().orElseThrow());
    assertThat(trip.durationSeconds()).isEqualTo(99);
    assertThat(trip.gaps()).isEmpty();
  }

  @Test
  void aLongSleepEndsTheTripWhereItBeganAndTheNextOneStartsAfterIt() throws Exception {
    driveFrom(0, 50);
    tell(new TabletNews.Slept(Duration.ofHours(8), true), 50);
    driveFrom(51, 100);

    assertThat(told.ended).extracting(EndedTrip::cause).containsOnly(EndedTrip.Cause.LONG_SLEEP);
    TripSummary before = library.find(told.ended.getFirst().tripId());
    assertThat(before.durationSeconds()).isEqualTo(49);
    TripSummary after = library.find(log.end().tripId().orElseThrow());
    assertThat(after.start()).isEqualTo(DemoDrives.START.plus(Duration.ofHours(8)).plusSeconds(51));
    assertThat(after.gaps()).isEmpty();
  }

  @Test
  void aReplaySeesWhatTheDriveSaw() throws Exception {
    driveFrom(0, 50);
    tell(LOW, 20.3);
    tell(new TabletNews.Slept(Duration.ofMinutes(3), true), 50);
    driveFrom(51, 100);
    Instant now = DemoDrives.START.plusSeconds(280);
    tell(new TabletNews.ClockSet(now, now.plusSeconds(7), true), 100);
    driveFrom(100, 120);
    String trip = log.end().tripId().orElseThrow();

    Heard replayed = new Heard();
    new Replay(DemoDrives.ENGLISH.setup(library.vehicleOf(trip), false), replayed)
        .run(library, library.find(trip));

    assertThat(replayed.entries).isEqualTo(live.entries);
    assertThat(replayed.adviceLines()).isEqualTo(live.adviceLines());
    assertThat(replayed.last().tablet()).isEqualTo(live.last().tablet());
    assertThat(replayed.last().clock()).isEqualTo(live.last().clock());
  }

  @Test
  void everyNewsIsReadAsItWasWritten() {
    Instant now = DemoDrives.START;
    List<TabletNews> all =
        List.of(
            new TabletNews.OnBattery(63),
            LOW,
            EMPTY,
            new TabletNews.Charging(7),
            new TabletNews.MayFallAsleep("systemd-inhibit: \"no\" bus\n"),
            new TabletNews.ClockSet(now, now.minusMillis(2001), true),
            new TabletNews.Slept(Duration.ofMillis(720_250), true));
    assertThat(all.stream().map(news -> TabletText.event(3, news)).map(TabletText::news))
        .containsExactlyElementsOf(all.stream().map(Optional::of).toList());
    assertThat(TabletText.news(new TripEvent(3, TripEvent.Kind.TABLET, "")))
        .as("of a later version")
        .isEmpty();
    assertThat(TabletText.news(new TripEvent(3, TripEvent.Kind.TABLET, "{\"news\":\"stolen\"}")))
        .isEmpty();
    assertThat(TabletText.news(new TripEvent(3, TripEvent.Kind.CLOCK, "{\"news\":\"clock-set\"}")))
        .isEmpty();
  }

  private final class Told implements PipelineOutput {
    private final List<TabletReport> reports = new ArrayList<>();
    private final List<EndedTrip> ended = new ArrayList<>();

    @Override
    public void entry(TripEntry entry) {
      live.entry(entry);
    }

    @Override
    public void advice(steadypull.advice.AdviceEvent event) {
      live.advice(event);
    }

    @Override
    public void second(DriveSnapshot snapshot) {
      live.second(snapshot);
    }

    @Override
    public void tablet(TabletReport report) {
      reports.add(report);
    }

    @Override
    public void tripEnded(EndedTrip trip) {
      ended.add(trip);
    }
  }
}
