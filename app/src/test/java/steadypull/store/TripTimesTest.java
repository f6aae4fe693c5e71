package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** Trips keep their place in the list and their samples, whatever the tablet's clock does. */
class TripTimesTest {
  @TempDir Path folder;

  @Test
  void aClockThatWasSetBackBetweenTripsLosesNothing() throws Exception {
    Instant late = Instant.parse("2026-07-15T17:45:12Z");
    try (TripLibrary library = TripLibrary.open(folder)) {
      String first = record(library, late, ZoneOffset.UTC, 10);
      String second = record(library, late.minusSeconds(86_400), ZoneOffset.UTC, 20);
      String atTheSameMoment = record(library, late, ZoneOffset.UTC, 30);

      assertThat(library.trips(Optional.empty()).stream().map(TripSummary::id))
          .containsExactly(atTheSameMoment, first, second);
      assertThat(library.find(first).samples()).isEqualTo(10);
      assertThat(library.find(second).samples()).isEqualTo(20);
      assertThat(library.find(atTheSameMoment).samples()).isEqualTo(30);
    }
  }

  /** Samples are stamped by the link; what the clock did is an event among them. */
  @Test
  void aClockThatIsSetDuringATripMovesNoSample() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder =
            library.begin(trip(Instant.parse("2026-07-15T17:45:12Z"), ZoneOffset.UTC))) {
      List<TripEntry> entries =
          List.of(
              new TripEntry.OfSample(sample(0)),
              new TripEntry.OfEvent(
                  new TripEvent(500_000, TripEvent.Kind.CLOCK, "set back by 3600 s")),
              new TripEntry.OfSample(sample(1)));
      recorder.append(sample(0));
      recorder.append(new TripEvent(500_000, TripEvent.Kind.CLOCK, "set back by 3600 s"));
      recorder.append(sample(1));
      recorder.seal(1_000_000);

      List<TripEntry> found = new ArrayList<>();
      library.replay(recorder.tripId(), found::add);
      assertThat(found).isEqualTo(entries);
      assertThat(library.find(recorder.tripId()).gaps()).isEmpty();
    }
  }

  /**
   * The night of 25 October 2026 has half past two twice in Central European time (IANA time zone
   * database, as Java brings it).
   */
  @Test
  void theHourThatComesTwiceIsListedInTheOrderInWhichItPassed() throws Exception {
    ZoneId zone = ZoneId.of("CET");
    LocalDateTime halfPastTwo = LocalDateTime.of(2026, 10, 25, 2, 30);
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(halfPastTwo);
    assertThat(offsets).hasSize(2);
    try (TripLibrary library = TripLibrary.open(folder)) {
      String winter =
          record(library, halfPastTwo.toInstant(offsets.getLast()), offsets.getLast(), 2);
      String summer =
          record(library, halfPastTwo.toInstant(offsets.getFirst()), offsets.getFirst(), 1);

      List<TripSummary> trips = library.trips(Optional.empty());
      assertThat(trips.stream().map(TripSummary::id)).containsExactly(winter, summer);
      assertThat(trips)
          .allSatisfy(
              trip ->
                  assertThat(trip.start().atOffset(trip.offset().orElseThrow()).toLocalDateTime())
                      .isEqualTo(halfPastTwo));
    }
  }

  private static String record(TripLibrary library, Instant start, ZoneOffset offset, int samples)
      throws LibraryException {
    try (TripRecorder recorder = library.begin(trip(start, offset))) {
      for (int number = 0; number < samples; number++) {
        recorder.append(sample(number));
      }
      recorder.seal(samples * 1_000_000L);
      return recorder.tripId();
    }
  }

  private static NewTrip trip(Instant start, ZoneOffset offset) {
    return new NewTrip(
        Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR),
        start,
        Optional.of(offset),
        TripDetails.NONE,
        "test",
        "0.1.0");
  }

  private static Sample sample(int number) {
    return new Sample(Channels.ENGINE_COOLANT_TEMP, number * 1_000_000L, 90);
  }
}
