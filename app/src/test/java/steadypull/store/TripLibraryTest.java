package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.LibraryException.Reason;
import steadypull.store.TripSummary.Gap;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.Vehicle;

class TripLibraryTest {
  private static final Vehicle WATTLE = Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR);
  private static final Instant START = Instant.parse("2026-07-15T17:45:12.345678Z");

  private static final List<TripEvent.Kind> KINDS = List.of(TripEvent.Kind.values());

  @TempDir Path folder;

  @Test
  void entriesComeBackBitForBitInTheOrderOfAcceptance() throws LibraryException {
    List<TripEntry> entries = anyEntries(new SplittableRandom(7), 5_000);
    try (TripLibrary library = TripLibrary.open(folder)) {
      String id = record(library, entries);

      assertThat(entriesOf(library, id)).isEqualTo(entries);
    }
    try (TripLibrary library = TripLibrary.open(folder)) {
      String id = library.trips(Optional.empty()).getFirst().id();

      assertThat(entriesOf(library, id)).isEqualTo(entries);
    }
  }

  @Test
  void summaryTellsWhatTheTripHolds() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder)) {
      String id;
      try (TripRecorder recorder = library.begin(trip(WATTLE, START, "baseline"))) {
        id = recorder.tripId();
        recorder.append(speed(0, 36));
        recorder.append(speed(4, 72));
        recorder.append(new Sample(Channels.ENGINE_COOLANT_TEMP, 9_000_001, 90));
        recorder.append(speed(12, 72));
        recorder.append(speed(13, 72));
        recorder.seal(18_000_000);
      }

      TripSummary summary = library.find(id);

      assertThat(summary.vehicleName()).isEqualTo("Wattle 2");
      assertThat(summary.start()).isEqualTo(START);
      assertThat(summary.durationSeconds()).isEqualTo(18.0);
      // 4 s from 10 to 20 m/s, nothing over the silence of 8 s, 1 s at 20 m/s.
      assertThat(summary.distanceMetres().orElseThrow()).isCloseTo(80, within(1e-9));
      assertThat(summary.samples()).isEqualTo(5);
      assertThat(summary.channels())
          .containsExactly(Channels.VEHICLE_SPEED, Channels.ENGINE_COOLANT_TEMP);
      assertThat(summary.gaps()).containsExactly(new Gap(4, 9.000001));
      assertThat(summary.sealed()).isTrue();
      assertThat(summary.label()).isEqualTo("baseline");
    }
  }

  @Test
  void silenceAtBothEndsIsAGapToo() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder)) {
      String id = library.keep(trip(WATTLE, START, ""), List.of(speed(6, 50)), 11_000_001);

      assertThat(library.find(id).gaps()).containsExactly(new Gap(0, 6), new Gap(6, 11.000001));
    }
  }

  @Test
  void aReceiverThatGoesOnDoesNotHideThatTheVehicleIsSilent() throws LibraryException {
    List<Sample> samples = new ArrayList<>(List.of(speed(0, 50)));
    IntStream.range(0, 20)
        .mapToObj(second -> new Sample(Channels.ALTITUDE, second * 1_000_000L, 300))
        .forEach(samples::add);
    try (TripLibrary library = TripLibrary.open(folder)) {
      String positions = library.keep(trip(WATTLE, START, ""), samples.subList(1, 20), 19_000_000);
      String both = library.keep(trip(WATTLE, START, ""), samples, 19_000_000);

      assertThat(library.find(positions).gaps()).isEmpty();
      assertThat(library.find(both).gaps()).containsExactly(new Gap(0, 19));
    }
  }

  // Derived channels are computed on for some seconds from the last readings.
  @Test
  void whatTheProgramComputesDoesNotHideThatTheVehicleIsSilent() throws LibraryException {
    List<Sample> computed =
        IntStream.rangeClosed(1, 5)
            .mapToObj(second -> new Sample(Channels.WHEEL_POWER, second * 1_000_000L, 100))
            .toList();
    List<Sample> samples = new ArrayList<>(List.of(speed(0, 50)));
    samples.addAll(computed);
    samples.add(speed(8, 50));
    try (TripLibrary library = TripLibrary.open(folder)) {
      String dynamometer = library.keep(trip(WATTLE, START, ""), computed, 5_000_000);
      String drive = library.keep(trip(WATTLE, START, ""), samples, 8_000_000);

      assertThat(library.find(dynamometer).gaps()).isEmpty();
      assertThat(library.find(drive).gaps()).containsExactly(new Gap(0, 8));
    }
  }

  @Test
  void distanceIsUnknownWithoutSpeed() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder)) {
      Sample coolant = new Sample(Channels.ENGINE_COOLANT_TEMP, 0, 90);
      String id = library.keep(trip(WATTLE, START, ""), List.of(coolant), 0);

      assertThat(library.find(id).distanceMetres()).isEmpty();
    }
  }

  @Test
  void anUnsealedTripReachesToItsLastCommit() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(trip(WATTLE, START, ""))) {
      recorder.append(speed(1, 50));
      recorder.commit(2_500_000);
      recorder.append(speed(3, 50));

      TripSummary summary = library.find(recorder.tripId());

      assertThat(summary.sealed()).isFalse();
      assertThat(summary.durationSeconds()).isEqualTo(2.5);
      assertThat(summary.samples()).isEqualTo(1);
    }
  }

  @Test
  void closingWithoutASealCommitsWhatWasAccepted() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder)) {
      TripRecorder recorder = library.begin(trip(WATTLE, START, ""));
      recorder.append(speed(1, 50));
      recorder.close();

      assertThat(library.find(recorder.tripId()).samples()).isEqualTo(1);
      assertThat(library.find(recorder.tripId()).sealed()).isFalse();
    }
  }

  @Test
  void aSealedTripTakesNothingMore() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(trip(WATTLE, START, ""))) {
      recorder.seal(0);

      assertThatThrownBy(() -> recorder.append(speed(1, 50)))
          .isInstanceOf(IllegalStateException.class);
    }
  }

  @Test
  void tripsAreListedNewestFirstAndFoundByText() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder)) {
      Vehicle other = WATTLE.withName("Älterer");
      String middle = library.keep(trip(WATTLE, START, "after cooler"), List.of(), 0);
      String oldest = library.keep(trip(WATTLE, START.minusSeconds(9), "baseline"), List.of(), 0);
      String newest = library.keep(trip(other, START.plusSeconds(9), "baseline"), List.of(), 0);

      assertThat(ids(library.trips(Optional.empty()))).containsExactly(newest, middle, oldest);
      assertThat(ids(library.trips(Optional.of("BASE")))).containsExactly(newest, oldest);
      assertThat(ids(library.trips(Optional.of("äLTER")))).containsExactly(newest);
      assertThat(library.trips(Optional.of("nothing"))).isEmpty();
    }
  }

  @Test
  void aUniqueBeginningOfAnIdIsEnough() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder)) {
      String first = library.keep(trip(WATTLE, START, ""), List.of(), 0);
      String second = library.keep(trip(WATTLE, START.plusSeconds(86_400), ""), List.of(), 0);

      assertThat(first).matches("20260715T174512Z-[a-z2-9]{4}");
      assertThat(library.find("20260715").id()).isEqualTo(first);
      assertThat(library.find(second).id()).isEqualTo(second);
      assertThatThrownBy(() -> library.find("202607"))
          .isInstanceOfSatisfying(
              LibraryException.class, e -> assertThat(e.reason()).isEqualTo(Reason.AMBIGUOUS_TRIP))
          .hasMessageContaining(first)
          .hasMessageContaining(second);
      assertThatThrownBy(() -> library.find(first.substring(0, 18) + "?"))
          .isInstanceOfSatisfying(
              LibraryException.class, e -> assertThat(e.reason()).isEqualTo(Reason.UNKNOWN_TRIP))
          .hasMessageContaining("Did you mean " + first);
      assertThatThrownBy(() -> library.find("%")).isInstanceOf(LibraryException.class);
      assertThatThrownBy(() -> library.find("")).isInstanceOf(LibraryException.class);
    }
  }

  @Test
  void aTripKeepsTheVehicleOfItsStart() throws LibraryException {
    Limit changed =
        new Limit(
            Channels.ENGINE_COOLANT_TEMP, 104, new Provenance(Provenance.Kind.MAKER, "handbook"));
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(WATTLE);
      String id = library.keep(trip(WATTLE, START, ""), List.of(), 0);
      library.save(WATTLE.withLimit(changed));

      assertThat(library.vehicleOf(id)).isEqualTo(WATTLE);
      assertThat(library.vehicle("Wattle 2")).contains(WATTLE.withLimit(changed));
      assertThat(library.vehicle("Wattle")).isEmpty();
    }
  }

  @Test
  void vehiclesAreListedLastUsedFirst() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(WATTLE);
      library.save(WATTLE.withName("Banksia"));
      assertThat(library.vehicleNames()).containsExactly("Banksia", "Wattle 2");

      library.keep(trip(WATTLE, START, ""), List.of(), 0);
      assertThat(library.vehicleNames()).containsExactly("Wattle 2", "Banksia");
    }
  }

  @Test
  void aTripIsKeptWholeOrNotAtAll() throws LibraryException {
    Iterable<Sample> endsInAFault =
        () ->
            IntStream.range(0, 25_000)
                .mapToObj(
                    number -> {
                      if (number == 24_000) {
                        throw new IllegalStateException("the source has gone");
                      }
                      return new Sample(Channels.VEHICLE_SPEED, number, 50);
                    })
                .iterator();
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThatThrownBy(() -> library.keep(trip(WATTLE, START, ""), endsInAFault, 0))
          .isInstanceOf(IllegalStateException.class);

      assertThat(library.trips(Optional.empty())).isEmpty();
    }
  }

  @Test
  void onlyTheOwnerCanReadALibrary() throws Exception {
    Path fresh = folder.resolve("a ?mode=memory #%20/library");
    try (TripLibrary library = TripLibrary.open(fresh)) {
      library.save(WATTLE);
      if (fresh.getFileSystem().supportedFileAttributeViews().contains("posix")) {
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(fresh)))
            .isEqualTo("rwx------");
        try (var files = Files.list(fresh)) {
          for (Path file : files.toList()) {
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .as(file.toString())
                .isEqualTo("rw-------");
          }
        }
      }
    }
  }

  private static String record(TripLibrary library, List<TripEntry> entries)
      throws LibraryException {
    try (TripRecorder recorder = library.begin(trip(WATTLE, START, ""))) {
      int count = 0;
      for (TripEntry entry : entries) {
        switch (entry) {
          case TripEntry.OfSample(Sample sample) -> recorder.append(sample);
          case TripEntry.OfEvent(TripEvent event) -> recorder.append(event);
        }
        if (++count % 700 == 0) {
          recorder.commit(entry.timeMicros());
        }
      }
      recorder.seal(0);
      return recorder.tripId();
    }
  }

  /** Any bit pattern that is a number, times with jumps back, events between. */
  private static List<TripEntry> anyEntries(SplittableRandom random, int count) {
    List<TripEntry> entries = new ArrayList<>();
    while (entries.size() < count) {
      long time = Math.max(0, entries.size() * 50_000L + random.nextInt(-100_000, 100_000));
      if (random.nextInt(10) == 0) {
        TripEvent.Kind kind = KINDS.get(random.nextInt(KINDS.size()));
        entries.add(new TripEntry.OfEvent(new TripEvent(time, kind, "detail " + random.nextInt())));
      } else {
        Channel channel = new Channel("own_" + random.nextInt(40), "unit");
        entries.add(new TripEntry.OfSample(new Sample(channel, time, anyFinite(random))));
      }
    }
    return entries;
  }

  private static double anyFinite(SplittableRandom random) {
    double value = Double.longBitsToDouble(random.nextLong());
    return switch (random.nextInt(3)) {
      case 0 -> random.nextInt(-1000, 1000);
      case 1 -> -0.0;
      default -> Double.isFinite(value) ? value : Double.MIN_VALUE;
    };
  }

  private static List<TripEntry> entriesOf(TripLibrary library, String id) throws LibraryException {
    List<TripEntry> entries = new ArrayList<>();
    library.replay(id, entries::add);
    return entries;
  }

  private static List<String> ids(List<TripSummary> trips) {
    return trips.stream().map(TripSummary::id).toList();
  }

  private static NewTrip trip(Vehicle vehicle, Instant start, String label) {
    return new NewTrip(vehicle, start, label, "demo:long-hot-grade", "0.1.0");
  }

  private static Sample speed(long seconds, double kilometresPerHour) {
    return new Sample(Channels.VEHICLE_SPEED, seconds * 1_000_000, kilometresPerHour);
  }
}
