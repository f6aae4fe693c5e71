package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.adapter.LinkState;
import steadypull.adapter.SilenceCause;
import steadypull.advice.AdviceLine;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/** Stories of engines that stop: what ends a trip, what does not, and what begins the next. */
class EngineOffTripTest {
  private static final LinkState CONNECTED =
      new LinkState.Connected("adapter", "CAN", "", List.of("01.05", "01.0C", "01.0D"));
  private static final LinkState RESTING =
      new LinkState.Resting("adapter", OptionalDouble.of(12.4));
  private static final LinkState SILENT =
      new LinkState.VehicleSilent("adapter", SilenceCause.NO_ANSWER);
  private static final LinkState LOST = new LinkState.Lost("The port is gone.", 1);

  @TempDir private Path folder;

  private final Heard heard = new Heard();
  private final List<String> ended = new ArrayList<>();
  private TripLibrary library;
  private DriveLog log;

  @BeforeEach
  void openLog() throws Exception {
    library = TripLibrary.open(folder);
    log = log(DriveEnd.never());
  }

  @AfterEach
  void closeLibrary() {
    library.close();
  }

  @Test
  void anEngineThatIsOffEndsTheTripAndItsNextStartBeginsAnother() throws Exception {
    driveFrom(0, 120, 1800);
    driveFrom(120, 180, 0);
    waitFrom(180, 400, RESTING);

    assertThat(ended).hasSize(1);
    TripSummary first = library.find(ended.getFirst());
    assertThat(first.sealed()).isTrue();
    assertThat(first.durationSeconds())
        .isBetween(119.0 + EngineOffWait.ENDS_TRIP_AFTER.toSeconds(), 302.0);
    assertThat(heard.last().recording()).isInstanceOf(RecordingState.Waiting.class);

    driveFrom(400, 450, 1800);
    DriveOutcome outcome = log.end();

    assertThat(outcome.earlierTripIds()).isEqualTo(ended);
    TripSummary second = library.find(outcome.tripId().orElseThrow());
    assertThat(second.start()).isEqualTo(DemoDrives.START.plusSeconds(400));
    assertThat(second.durationSeconds()).isBetween(48.0, 50.0);
  }

  @Test
  void aLongStopWithTheEngineOffJustShortOfTheSpanKeepsOneTrip() throws Exception {
    driveFrom(0, 120, 1800);
    waitFrom(120, 298, RESTING);
    driveFrom(298, 400, 1800);

    assertThat(ended).isEmpty();
    assertThat(library.find(log.end().tripId().orElseThrow()).gaps()).hasSize(1);
  }

  // The engine may be pulling all the same.
  @Test
  void aLinkThatFailsLeavesAGapAndNeverEndsTheTrip() throws Exception {
    for (LinkState state : List.of(LOST, SILENT)) {
      DriveLog other = log(DriveEnd.never());
      log = other;
      driveFrom(0, 120, 1800);
      waitFrom(120, 420, state);
      driveFrom(420, 450, 1800);

      assertThat(ended).as(state.toString()).isEmpty();
      TripSummary trip = library.find(other.end().tripId().orElseThrow());
      assertThat(trip.gaps()).as(state.toString()).hasSize(1);
      assertThat(trip.durationSeconds()).isGreaterThan(448);
    }
  }

  @Test
  void whileTheEngineIsOffNobodyIsToldThatTheLinkIsLost() {
    driveFrom(0, 120, 1800);
    driveFrom(120, 180, 0);
    waitFrom(180, 420, RESTING);

    assertThat(heard.seconds)
        .extracting(snapshot -> snapshot.advice().state())
        .doesNotContain(AdviceLine.State.LINK_LOST);
    assertThat(heard.last().link().state()).isEqualTo(LinkSummary.State.ENGINE_OFF);
  }

  @Test
  void theSpanToRecordCountsFromTheFirstTripOn() throws Exception {
    log = log(new DriveEnd(Optional.of(Duration.ofSeconds(650)), false));
    driveFrom(0, 120, 1800);
    waitFrom(120, 600, RESTING);
    driveFrom(600, 800, 1800);

    TripSummary second = library.find(log.end().tripId().orElseThrow());
    assertThat(ended).hasSize(1);
    assertThat(second.durationSeconds()).isBetween(49.0, 51.0);
  }

  @Test
  void anEndedTripIsReplayedAsItWasDriven() throws Exception {
    driveFrom(0, 120, 1800);
    waitFrom(120, 400, RESTING);
    Heard replayed = new Heard();

    new Replay(DemoDrives.ENGLISH.setup(library.vehicleOf(ended.getFirst()), false), replayed)
        .run(library, library.find(ended.getFirst()));

    assertThat(replayed.entries).isEqualTo(heard.entries);
  }

  private DriveLog log(DriveEnd end) throws Exception {
    return DriveLogs.log(library, end, new Ends());
  }

  private void driveFrom(int from, int until, double turnsPerMinute) {
    boolean goesOn = log.take(new Arrival.LinkChanged(CONNECTED, DriveLogs.at(from)));
    for (int second = from; second < until && goesOn; second++) {
      double kilometresPerHour = turnsPerMinute > 0 ? 60 : 0;
      log.take(DriveLogs.heard("01.0C", turnsPerMinute, second));
      log.take(DriveLogs.heard("01.0D", kilometresPerHour, second));
      log.take(DriveLogs.heard("01.05", 85, second));
      goesOn = log.take(new Arrival.LinkChanged(CONNECTED, DriveLogs.at(second + 0.5)));
    }
  }

  private void waitFrom(int from, int until, LinkState state) {
    for (int second = from; second < until; second++) {
      log.take(new Arrival.LinkChanged(state, DriveLogs.at(second)));
    }
  }

  private final class Ends implements PipelineOutput {
    @Override
    public void entry(TripEntry entry) {
      heard.entry(entry);
    }

    @Override
    public void second(DriveSnapshot snapshot) {
      heard.second(snapshot);
    }

    @Override
    public void tripEnded(EndedTrip trip) {
      assertThat(trip.cause()).isEqualTo(EndedTrip.Cause.ENGINE_OFF);
      ended.add(trip.tripId());
    }
  }
}
