package steadypull.store;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** A trip with everything that a trip can have, as a file. */
final class TripFiles {
  static final Vehicle WATTLE = Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR);
  static final Instant START = Instant.parse("2026-07-15T17:45:12.123456Z");
  static final TripDetails DETAILS =
      new TripDetails(
          "after",
          "Customer waited.\nSecond run.",
          List.of("north ramp", "hot"),
          "second charge cooler",
          "gusty headwind",
          OptionalDouble.of(34.5));
  static final LinkIdentity LINK = new LinkIdentity("adapter 1.5", "CAN 11/500", "5f2a");
  private static final Channel ODD = new Channel("tow_ball_load", "kg, \"vertical\"");

  private TripFiles() {}

  /** Keeps such a trip and returns its id; nine seconds of silence are in it. */
  static String keep(TripLibrary library) throws LibraryException {
    library.save(WATTLE);
    NewTrip trip =
        new NewTrip(
            WATTLE, START, Optional.of(ZoneOffset.ofHours(-7)), DETAILS, "demo:cool-day", "0.1.0");
    try (TripRecorder recorder = library.begin(trip)) {
      recorder.describe(LINK);
      recorder.append(new TripEvent(0, TripEvent.Kind.LINK, "connected"));
      recorder.append(new Sample(Channels.VEHICLE_SPEED, 1, 80));
      recorder.append(new Sample(ODD, 1, -0.0));
      recorder.append(new TripEvent(2, TripEvent.Kind.MARK, "here"));
      recorder.append(new Sample(Channels.LATITUDE, 3, 1.5));
      recorder.append(new Sample(Channels.ROAD_GRADE, 3, Double.MIN_VALUE));
      recorder.commit(4);
      recorder.append(new Sample(Channels.VEHICLE_SPEED, 9_000_000, 80.1 + 0.2));
      recorder.append(new TripEvent(9_000_001, TripEvent.Kind.MARK, ""));
      recorder.seal(9_500_000);
      return recorder.tripId();
    }
  }

  static Path write(TripLibrary library, String tripId, Path file)
      throws LibraryException, IOException {
    try (OutputStream out = Files.newOutputStream(file)) {
      PortableTrip.write(library, library.find(tripId), _ -> true, out);
    }
    return file;
  }

  /** Such a trip as a file, from a library of its own in that folder. */
  static Path writeInto(Path folder) throws LibraryException, IOException {
    try (TripLibrary library = TripLibrary.open(folder.resolve("theirs"))) {
      return write(library, keep(library), folder.resolve("x.trip"));
    }
  }

  static MergedTrip merge(TripLibrary library, Path file) throws LibraryException {
    try (PortableTrip trip = PortableTrip.open(file)) {
      return library.<MergedTrip, LibraryException>addTrips(
          adder -> adder.merge(trip, details -> details));
    }
  }

  static List<TripEntry> entries(TripLibrary library, String tripId) throws LibraryException {
    List<TripEntry> entries = new ArrayList<>();
    library.replay(tripId, entries::add);
    return entries;
  }

  /** Does something to the database behind the program's back. */
  static void tamper(Path file, String... statements) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      for (String each : statements) {
        statement.execute(each);
      }
    }
  }
}
