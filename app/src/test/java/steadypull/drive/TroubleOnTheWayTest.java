package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.advice.AdviceEvent;
import steadypull.advice.AdviceLine;
import steadypull.channel.Sample;
import steadypull.store.TripEntry;
import steadypull.store.TripEvent;
import steadypull.store.TripSummary;

/** Links that break, and what is left of the drive. */
@Execution(ExecutionMode.CONCURRENT)
class TroubleOnTheWayTest {
  @TempDir private Path folder;

  @Test
  void aPortThatVanishesLeavesAGapInTheTripAndNotItsEnd() throws Exception {
    Heard heard = new Heard();
    TripSummary summary;
    try (DemoDrives demo = new DemoDrives(folder)) {
      String trip =
          demo.drive("demo:cool-day?speed=max&fault=vanish@40-70", 120, heard)
              .tripId()
              .orElseThrow();
      summary = demo.library().find(trip);
    }

    assertThat(summary.sealed()).isTrue();
    assertThat(summary.durationSeconds()).isEqualTo(120);
    assertThat(summary.gaps()).hasSize(1);
    assertThat(states(heard)).contains(LinkSummary.State.LOST, LinkSummary.State.CONNECTED);
    assertThat(heard.last().link().state()).isEqualTo(LinkSummary.State.CONNECTED);
  }

  @Test
  void whileNothingComesTheDriverIsToldThatAdviceIsPaused() throws Exception {
    Heard heard = new Heard();
    try (DemoDrives demo = new DemoDrives(folder)) {
      demo.drive("demo:cool-day?speed=max&fault=vanish@40-70", 120, heard);
    }

    List<AdviceLine.State> said =
        heard.seconds.stream().map(snapshot -> snapshot.advice().state()).distinct().toList();
    assertThat(said).contains(AdviceLine.State.LINK_LOST);
    assertThat(heard.last().advice().state()).isNotEqualTo(AdviceLine.State.LINK_LOST);
  }

  @Test
  void anAdapterThatTalksNonsenseGivesNoSamplesAndIsRecoveredFrom() throws Exception {
    Heard heard = new Heard();
    try (DemoDrives demo = new DemoDrives(folder)) {
      demo.drive("demo:cool-day?speed=max&fault=nonsense@40-60", 150, heard);
    }

    assertThat(heard.samples()).extracting(Sample::timeMicros).anyMatch(time -> time > 120_000_000);
    assertThat(heard.last().link().state()).isEqualTo(LinkSummary.State.CONNECTED);
  }

  @Test
  void anEngineThatIsOffFromTheStartKeepsNoTripAndSaysSo() throws Exception {
    Heard heard = new Heard();
    DriveOutcome outcome;
    try (DemoDrives demo = new DemoDrives(folder)) {
      outcome = demo.drive("demo:cool-day?speed=max&fault=engine-off@0-600", 60, heard);
      assertThat(demo.library().trips(Optional.empty())).isEmpty();
    }

    assertThat(outcome.tripId()).isEmpty();
    assertThat(heard.last().link().state()).isEqualTo(LinkSummary.State.VEHICLE_SILENT);
  }

  // Ignition on, engine standing, nothing charges: 60 s until it counts as off, 3 min until the
  // end.
  @Test
  void anEngineThatStopsEndsTheTripAndItsNextStartBeginsAnother() throws Exception {
    DriveOutcome outcome;
    try (DemoDrives demo = new DemoDrives(folder)) {
      outcome = demo.drive("demo:cool-day?speed=max&fault=engine-stopped@60-330", 420, new Heard());
      assertThat(demo.library().trips(Optional.empty())).hasSize(2).allMatch(TripSummary::sealed);
    }

    assertThat(outcome.earlierTripIds()).hasSize(1);
    assertThat(outcome.tripId()).isPresent();
    assertThat(outcome.unkept()).isEmpty();
  }

  @Test
  void anAddressThatNobodyKnowsIsRefusedWithWhatIsExpected() throws Exception {
    try (DemoDrives demo = new DemoDrives(folder)) {
      assertThatThrownBy(
              () ->
                  demo.desk()
                      .begin(
                          DemoDrives.request("carrier-pigeon://x", DriveEnd.never()), new Heard()))
          .isInstanceOf(DriveException.class)
          .hasMessageContaining("\"carrier-pigeon://x\"")
          .hasMessageContaining("tcp://host:port");
    }
  }

  @Test
  void aMissingSerialPortIsToldWhileTheDriveKeepsTrying() throws Exception {
    CompletableFuture<DriveSnapshot> lost = new CompletableFuture<>();
    try (DemoDrives demo = new DemoDrives(folder)) {
      DriveSession session =
          demo.desk()
              .open(
                  "/dev/ttyUSB97",
                  "My rig",
                  snapshot -> {
                    if (snapshot.link().state() == LinkSummary.State.LOST) {
                      lost.complete(snapshot);
                    }
                  });
      DriveSnapshot told = lost.orTimeout(300, TimeUnit.SECONDS).join();
      session.close();

      assertThat(told.link().detail()).contains("/dev/ttyUSB97").contains("no such port");
      assertThat(demo.library().trips(Optional.empty())).isEmpty();
    }
  }

  @Test
  void endingADriveByHandSealsItsTrip() throws Exception {
    CompletableFuture<DriveSnapshot> running = new CompletableFuture<>();
    try (DemoDrives demo = new DemoDrives(folder)) {
      DriveSession session =
          demo.desk()
              .open(
                  "demo:cool-day?speed=20",
                  "Wattle 2",
                  snapshot -> {
                    if (snapshot.recording() instanceof RecordingState.Recording) {
                      running.complete(snapshot);
                    }
                  });
      running.join();
      session.close();
      session.close();

      assertThat(demo.library().trips(Optional.empty()))
          .singleElement()
          .matches(TripSummary::sealed);
    }
  }

  @Test
  void marksAndAnswersAreKeptWithTheTripAtTheirTime() throws Exception {
    Heard heard = new Heard();
    CompletableFuture<DriveSession> session = new CompletableFuture<>();
    try (DemoDrives demo = new DemoDrives(folder)) {
      DriveEnd end = new DriveEnd(Optional.of(Duration.ofSeconds(30)), true);
      RunningDrive drive =
          demo.desk()
              .begin(
                  DemoDrives.request("demo:cool-day?speed=100", end), new MarkOnce(heard, session));
      session.complete(drive);
      drive.outcome().join();
    }

    assertThat(heard.entries)
        .filteredOn(TripEntry.OfEvent.class::isInstance)
        .extracting(entry -> ((TripEntry.OfEvent) entry).event().kind())
        .contains(TripEvent.Kind.MARK);
  }

  private static List<LinkSummary.State> states(Heard heard) {
    return heard.seconds.stream().map(each -> each.link().state()).distinct().toList();
  }

  /** Presses "Mark" once, when the drive is under way. */
  private record MarkOnce(Heard heard, CompletableFuture<DriveSession> session)
      implements PipelineOutput {
    private static final int WAITED_SECONDS = 10;

    @Override
    public void entry(TripEntry entry) {
      heard.entry(entry);
    }

    @Override
    public void advice(AdviceEvent event) {
      heard.advice(event);
    }

    @Override
    public void second(DriveSnapshot snapshot) {
      heard.second(snapshot);
      if (heard.seconds.size() == WAITED_SECONDS) {
        session.join().mark();
      }
    }
  }
}
