package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.adapter.LinkState;
import steadypull.adapter.Reading;
import steadypull.adapter.diagnostic.Signal;
import steadypull.adapter.position.FixQuality;
import steadypull.adapter.position.PositionReport;
import steadypull.adapter.position.ReceiverState;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;

/** Where the vehicle is becomes part of the trip, beside what the vehicle tells. */
class PositionsOnTheWayTest {
  @TempDir private Path folder;

  private final Heard live = new Heard();
  private final Heard replayed = new Heard();
  private final List<ReceiverNews> news = new ArrayList<>();

  @Test
  void aMeasuredPositionIsKeptAtItsTimeAndReplayed() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      DriveLog log = log(library);
      log.take(new Arrival.Located(fix(1, FixQuality.STANDARD)));
      log.take(connected(1.9));
      log.take(speed(2));
      log.take(new Arrival.Located(fix(3.5, FixQuality.STANDARD)));
      log.take(speed(4));
      replay(library, log.end().tripId().orElseThrow());
    }

    assertThat(live.samples())
        .as("a trip begins with the first reading, not with the first position")
        .containsExactly(
            new Sample(Channels.VEHICLE_SPEED, 0, 80),
            new Sample(Channels.LATITUDE, 1_500_000, -41.25),
            new Sample(Channels.LONGITUDE, 1_500_000, -160.5),
            new Sample(Channels.ALTITUDE, 1_500_000, 612.5),
            new Sample(Channels.VEHICLE_SPEED, 2_000_000, 80));
    assertThat(replayed.entries).isEqualTo(live.entries);
  }

  @Test
  void whatWasNotMeasuredIsNotKept() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      DriveLog log = log(library);
      log.take(speed(2));
      log.take(new Arrival.Located(new PositionReport.Unfixed(at(3))));
      log.take(new Arrival.Located(fix(4, FixQuality.ESTIMATED)));
      log.end();
    }

    assertThat(live.samples()).containsExactly(new Sample(Channels.VEHICLE_SPEED, 0, 80));
  }

  // The position is told when its burst has ended, and stamped when it began.
  @Test
  void aPositionOvertakenByAReadingIsKeptInOrder() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      DriveLog log = log(library);
      log.take(speed(2));
      log.take(speed(4));
      log.take(new Arrival.Located(fix(3.9, FixQuality.STANDARD)));
      replay(library, log.end().tripId().orElseThrow());
    }

    assertThat(live.samples()).extracting(Sample::timeMicros).isSorted();
    assertThat(replayed.entries).isEqualTo(live.entries);
  }

  // Held up for four seconds and then told at once: three of them would lie 100 m too far ahead.
  @Test
  void positionsThatWereHeldUpOnTheWayAreNotPutWhereTheVehicleIsNow() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      DriveLog log = log(library);
      log.take(speed(0));
      for (int second = 1; second <= 20; second++) {
        log.take(new Arrival.Located(fix(second + 0.2, second)));
      }
      for (int second = 21; second <= 24; second++) {
        log.take(new Arrival.Located(fix(24.3, second)));
      }
      log.take(new Arrival.Located(fix(25.2, 25)));
      log.end();
    }

    assertThat(latitudeSeconds())
        .startsWith(1.2, 2.2)
        .endsWith(19.2, 20.2, 24.3, 24.3, 25.2)
        .hasSize(23);
    assertThat(news).isEmpty();
  }

  // A simulated drive that is too quick for its machine: the receiver's day is longer.
  @Test
  void aReceiverWhoseClockRunsAwayTellsNoPositionsUntilItKeepsPaceAgain() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      DriveLog log = log(library);
      log.take(speed(0));
      for (int second = 1; second <= 120; second++) {
        log.take(new Arrival.Located(fix(second, second * 1.2)));
      }
      for (int second = 121; second <= 300; second++) {
        log.take(new Arrival.Located(fix(second, second + 24)));
      }
      log.end();
    }

    assertThat(news)
        .extracting(ReceiverNews::state)
        .containsExactly(ReceiverNews.State.OUT_OF_PACE, ReceiverNews.State.LOCATED);
    assertThat(news.getFirst().timeMicros()).isBetween(40_000_000L, 65_000_000L);
    assertThat(news.getLast().timeMicros()).isBetween(120_000_000L, 190_000_000L);
    assertThat(latitudeSeconds())
        .noneMatch(second -> second > 65 && second < 120)
        .anyMatch(second -> second > 190);
  }

  // The tablet slept, or the receiver has learnt of the leap seconds: a step is no drift.
  @Test
  void aClockThatIsSetCostsNoPositions() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      DriveLog log = log(library);
      log.take(speed(0));
      for (int second = 1; second <= 100; second++) {
        log.take(new Arrival.Located(fix(second, second < 50 ? second : second + 600)));
      }
      log.end();
    }

    assertThat(latitudeSeconds()).hasSize(100);
    assertThat(news).isEmpty();
  }

  private List<Double> latitudeSeconds() {
    return live.samples().stream()
        .filter(sample -> sample.channel().equals(Channels.LATITUDE))
        .map(sample -> sample.timeMicros() / 1e6)
        .toList();
  }

  // The adapter is gone for ten seconds while the receiver speaks on.
  @Test
  void aReceiverDoesNotHideThatTheVehicleIsSilent() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      DriveLog log = log(library);
      log.take(connected(1.9));
      log.take(speed(2));
      for (int second = 3; second <= 12; second++) {
        log.take(new Arrival.Located(fix(second, FixQuality.STANDARD)));
      }
      log.end();
    }

    assertThat(live.last().link().samplesPerSecond()).isZero();
    assertThat(live.last().link().freshChannels()).isZero();
  }

  @Test
  void theReceiversStateIsTold() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      DriveLog log = log(library);
      log.take(new Arrival.ReceiverChanged(new ReceiverState.Absent("No port."), at(1)));
      log.take(new Arrival.ReceiverChanged(new ReceiverState.Unfixed(), at(2)));
      log.take(new Arrival.ReceiverChanged(new ReceiverState.Fixed(), at(3)));
      log.end();
    }

    assertThat(news)
        .containsExactly(
            new ReceiverNews(1_000_000, ReceiverNews.State.ABSENT, "No port."),
            new ReceiverNews(2_000_000, ReceiverNews.State.SEARCHING, ""),
            new ReceiverNews(3_000_000, ReceiverNews.State.LOCATED, ""));
  }

  @Test
  void anAddressThatNoReceiverCanHaveIsRefusedBeforeTheDriveBegins() throws Exception {
    try (DemoDrives demo = new DemoDrives(folder)) {
      LiveDrives desk = demo.desk().listeningTo("nowhere");
      assertThatThrownBy(
              () -> desk.begin(DemoDrives.request("demo:cool-day", DriveEnd.never()), live))
          .isInstanceOf(DriveException.class)
          .hasMessageContaining("nowhere")
          .hasMessageContaining("tcp://host:port");
    }
  }

  private DriveLog log(TripLibrary library) throws Exception {
    return DriveLogs.log(library, DriveEnd.never(), new WithNews());
  }

  private void replay(TripLibrary library, String trip) throws Exception {
    new Replay(DemoDrives.ENGLISH.setup(library.vehicleOf(trip), false), replayed)
        .run(library, library.find(trip));
  }

  private static Arrival connected(double second) {
    return new Arrival.LinkChanged(
        new LinkState.Connected("adapter", "CAN", "", List.of("01.0D")), at(second));
  }

  private static Arrival speed(double second) {
    return new Arrival.Heard(
        new Reading("7E8", new Signal("01.0D", "vehicle speed", "km/h"), 80, at(second)));
  }

  /** A fix that arrived at a second and says another of its own day. */
  private static PositionReport.Fixed fix(double second, double own) {
    PositionReport.Fixed fix = fix(second, FixQuality.STANDARD);
    return new PositionReport.Fixed(
        fix.nanoTime(),
        fix.latitudeDegrees(),
        fix.longitudeDegrees(),
        fix.altitudeMetres(),
        fix.speedKilometresPerHour(),
        fix.courseDegrees(),
        Optional.of(Instant.parse("2026-07-15T12:00:00Z").plusNanos(at(own))),
        fix.quality(),
        fix.satellites(),
        fix.horizontalDilution());
  }

  private static PositionReport.Fixed fix(double second, FixQuality quality) {
    return new PositionReport.Fixed(
        at(second),
        -41.25,
        -160.5,
        OptionalDouble.of(612.5),
        OptionalDouble.of(79),
        OptionalDouble.empty(),
        Optional.empty(),
        quality,
        OptionalInt.of(9),
        OptionalDouble.empty());
  }

  private static long at(double second) {
    return Math.round(second * 1e9);
  }

  private final class WithNews implements PipelineOutput {
    @Override
    public void entry(TripEntry entry) {
      live.entry(entry);
    }

    @Override
    public void second(DriveSnapshot snapshot) {
      live.second(snapshot);
    }

    @Override
    public void receiver(ReceiverNews told) {
      news.add(told);
    }
  }
}
