package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.LibraryException.Reason;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** What is said of trips, and how they are thrown away. */
class TripShelfTest {
  private static final Vehicle WATTLE = Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR);
  private static final Instant START = Instant.parse("2026-07-15T17:45:12Z");
  private static final TripDetails DETAILS =
      new TripDetails(
          "after",
          "Customer waited.\nSecond run of the day.",
          List.of("north ramp", "hot"),
          "second charge cooler",
          "gusty headwind",
          OptionalDouble.of(34.5));

  @TempDir Path folder;

  @Test
  void whatIsSaidOfATripComesBackAndIsFound() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      Optional<ZoneOffset> offset = Optional.of(ZoneOffset.ofHoursMinutes(-9, -30));
      NewTrip trip = new NewTrip(WATTLE, START, offset, DETAILS, "demo:x", "0.1.0");
      String id = library.keep(trip, List.of(), 0);
      library.keep(new NewTrip(WATTLE, START, "", "demo:x", "0.1.0"), List.of(), 0);

      assertThat(library.find(id).details()).isEqualTo(DETAILS);
      assertThat(library.find(id).offset()).isEqualTo(offset);
      assertThat(library.find(id).source()).isEqualTo("demo:x");
      for (String text : List.of("WAITED", "north r", "second charge", "gusty", "after")) {
        assertThat(library.trips(Optional.of(text)))
            .as(text)
            .extracting(TripSummary::id)
            .containsExactly(id);
      }
    }
  }

  @Test
  void somethingElseCanBeSaidLater() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      String id = library.keep(new NewTrip(WATTLE, START, "", "x", "0.1.0"), List.of(), 0);
      library.describe(id, DETAILS);
      assertThat(library.find(id).details()).isEqualTo(DETAILS);

      library.correctVehicle(id, WATTLE.withLayout(CoolingLayout.WATER_TO_AIR));
      assertThat(library.vehicleOf(id).layout()).isEqualTo(CoolingLayout.WATER_TO_AIR);
      assertThatThrownBy(() -> library.describe("nothing", DETAILS))
          .isInstanceOfSatisfying(
              LibraryException.class, e -> assertThat(e.reason()).isEqualTo(Reason.UNKNOWN_TRIP));
    }
  }

  @Test
  void whoAnsweredIsKept() throws Exception {
    LinkIdentity link = new LinkIdentity("adapter 1.5", "CAN 11/500", "5f2a");
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(new NewTrip(WATTLE, START, "", "x", "0.1.0"))) {
      recorder.describe(link);
      recorder.commit(0);

      assertThat(library.find(recorder.tripId()).link()).isEqualTo(link);
    }
  }

  @Test
  void aTripThatWasThrownAwayCanBeHadBackUntilTheLibraryIsClosed() throws Exception {
    String kept;
    String thrown;
    try (TripLibrary library = TripLibrary.open(folder)) {
      kept = library.keep(new NewTrip(WATTLE, START, "", "x", "1"), List.of(speed(0)), 0);
      thrown = library.keep(new NewTrip(WATTLE, START, "", "x", "1"), List.of(speed(1)), 1);
      library.remove(kept);
      library.remove(thrown);
      assertThat(library.trips(Optional.empty())).isEmpty();
      assertThatThrownBy(() -> library.find(thrown)).isInstanceOf(LibraryException.class);
      assertThatThrownBy(() -> library.remove(thrown)).isInstanceOf(LibraryException.class);

      library.putBack(kept);
      assertThat(library.find(kept).samples()).isEqualTo(1);
    }
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(library.trips(Optional.empty())).extracting(TripSummary::id).containsExactly(kept);
      assertThatThrownBy(() -> library.putBack(thrown)).isInstanceOf(LibraryException.class);
      library.replay(kept, entry -> assertThat(entry).isInstanceOf(TripEntry.OfSample.class));
    }
  }

  @Test
  void whatAnotherProgramHasThrownAwayIsNotForgottenHere() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      String id = library.keep(new NewTrip(WATTLE, START, "", "x", "1"), List.of(), 0);
      String own = library.keep(new NewTrip(WATTLE, START, "", "x", "1"), List.of(), 0);
      library.remove(id);
      try (TripLibrary other = TripLibrary.open(folder)) {
        other.remove(own);
      }

      library.putBack(id);

      assertThat(library.trips(Optional.empty())).extracting(TripSummary::id).containsExactly(id);
    }
  }

  @Test
  void aTripThatIsRecordedCannotBeThrownAway() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(new NewTrip(WATTLE, START, "", "x", "1"))) {
      assertThatThrownBy(() -> library.remove(recorder.tripId()))
          .isInstanceOf(LibraryException.class)
          .hasMessageContaining("expected a trip that has ended");
      assertThat(library.find(recorder.tripId()).sealed()).isFalse();
    }
  }

  @Test
  void severalTripsAreAddedTogetherOrNotAtAll() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThatThrownBy(
              () ->
                  library.addTrips(
                      adder -> {
                        adder.save(WATTLE);
                        adder.begin(new NewTrip(WATTLE, START, "", "x", "1")).seal(5);
                        throw new java.io.IOException("the second file is broken");
                      }))
          .isInstanceOf(java.io.IOException.class);
      assertThat(library.trips(Optional.empty())).isEmpty();
      assertThat(library.vehicleNames()).isEmpty();

      TripEvent mark = new TripEvent(3, TripEvent.Kind.MARK, "here");
      String id =
          library.addTrips(
              adder -> {
                AddedTrip added = adder.begin(new NewTrip(WATTLE, START, "", "x", "1"));
                added.append(speed(1));
                added.append(new TripEntry.OfEvent(mark));
                added.append(speed(4));
                return added.seal(5);
              });
      List<Object> entries = new java.util.ArrayList<>();
      library.replay(id, entries::add);
      assertThat(entries)
          .containsExactly(
              new TripEntry.OfSample(speed(1)),
              new TripEntry.OfEvent(mark),
              new TripEntry.OfSample(speed(4)));
    }
  }

  @Test
  void aMappingIsKeptPerLineOfHeaders() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.keepMapping("Time,Coolant", "first");
      library.keepMapping("Time,Coolant", "second");
      assertThat(library.mapping("Time,Coolant")).contains("second");
      assertThat(library.mapping("Time")).isEmpty();
    }
  }

  private static Sample speed(long micros) {
    return new Sample(Channels.VEHICLE_SPEED, micros, 50);
  }
}
