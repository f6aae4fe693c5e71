package steadypull.ui;

import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.advice.RuleSet;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.channel.UnitSystem;
import steadypull.drive.DriveWords;
import steadypull.drive.LiveDrives;
import steadypull.drive.TripDesk;
import steadypull.store.LibraryException;
import steadypull.store.NewTrip;
import steadypull.store.TripDetails;
import steadypull.store.TripLibrary;
import steadypull.store.TripRecorder;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** A real library with invented trips, as a desk for the trips screen. */
final class TripShelf implements AutoCloseable {
  static final Instant START = Instant.parse("2026-01-17T02:02:00Z");
  static final ZoneOffset THERE = ZoneOffset.ofHours(11);

  final TripLibrary library;

  TripShelf(Path folder) throws LibraryException {
    library = TripLibrary.open(folder);
  }

  /** The desk over the library. */
  TripDesk desk() {
    DriveWords words = new DriveWords(RuleSet.shipped(), Locale.ENGLISH, UnitSystem.METRIC);
    return new LiveDrives(library, List.of(), words, InstantSource.fixed(START), "0.0-test")
        .trips();
  }

  /** Keeps a trip of ten minutes; each begins a day after the one before. */
  String keep(String vehicle, int day, TripDetails details) throws LibraryException {
    List<Sample> samples = new ArrayList<>();
    for (int second = 0; second <= 600; second++) {
      long micros = second * 1_000_000L;
      samples.add(new Sample(Channels.VEHICLE_SPEED, micros, 72));
      samples.add(new Sample(Channels.ENGINE_COOLANT_TEMP, micros, 80 + second / 30.0));
    }
    return library.keep(newTrip(vehicle, day, details), samples, 600_000_000L);
  }

  /** Begins a trip that is being recorded until the recorder is closed. */
  TripRecorder begin(String vehicle, int day) throws LibraryException {
    return library.begin(newTrip(vehicle, day, TripDetails.NONE));
  }

  private static NewTrip newTrip(String vehicle, int day, TripDetails details) {
    return new NewTrip(
        Vehicle.unknown(vehicle, CoolingLayout.WATER_TO_AIR),
        START.plusSeconds(86_400L * day),
        Optional.of(THERE),
        details,
        "demo:long-hot-grade",
        "0.0-test");
  }

  /** Three trips of two vehicles, of which the newest is said the most. */
  void fill() throws LibraryException {
    keep("Wattle 2", 0, TripDetails.ofLabel("baseline").withTags(List.of("hot")));
    keep("Quarry tipper", 1, TripDetails.NONE.withNote("Fan roaring."));
    keep(
        "Wattle 2",
        2,
        new TripDetails(
            "after",
            "Second run of the day.\nCustomer waited, engine cold at the start.",
            List.of("hot", "north ramp"),
            "second charge cooler",
            "gusty headwind",
            OptionalDouble.of(34.5)));
  }

  @Override
  public void close() {
    library.close();
  }
}
