package steadypull.exchange;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Tag;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.LibraryException;
import steadypull.store.NewTrip;
import steadypull.store.PortableTrip;
import steadypull.store.TripLibrary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * Guided fuzzing of everything that reads a file of others, a minute under {@code -Psoak}: good
 * files that were spoiled in some places are taken or refused in words, and nothing else comes out.
 */
@Tag("soak")
class IncomingFileFuzzTest {
  private static final int MOST_SPOILED = 12;
  private static final int MOST_BYTES = 40;
  private static final TableZone ZONE = new TableZone(Optional.empty(), ZoneId.of("CET"));
  private static final String OWN =
      "time[s],vehicle_speed[km/h],own_1[1]\r\n0,80,1\r\n0.5,,2\r\n\"1\",81,\r\n";
  private static final String FOREIGN =
      """
      A logger;1
      Date;Time;Water [F];V
      24.10.2026;11:59:59,5 PM;203,5;n/a
      25.10.2026;2:30:00,0 AM;204;70
      25.10.2026;2:30:01,0 AM;204;71
      """;
  private static final String MAP =
      """
      separator = ";"
      decimal = ","
      held = true
      missing = ["n/a"]
      [time]
      column = "Time"
      date_column = "Date"
      format = "d.M.uuuu h:mm:ss,S a"
      [columns]
      "Water [F]" = "engine_coolant_temp[degF]"
      "V" = { channel = "vehicle_speed[km/h]", held = false }
      """;
  private static final String GPX =
      """
      <?xml version="1.0" encoding="UTF-8"?>
      <gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">
      <wpt lat="1" lon="2"/><trk><name>a &amp; b</name><trkseg>
      <trkpt lat="1.5" lon="2.5"><ele>300</ele><time>2026-07-15T10:00:00.5Z</time></trkpt>
      <trkpt lat="1.6" lon="2.6"/></trkseg></trk></gpx>
      """;

  private static final byte[] TRIP = trip();

  /** What is spoiled. A closed set. */
  private enum Target {
    OWN_TABLE,
    FOREIGN_TABLE,
    MAPPING,
    PROPOSAL,
    TRACK,
    /** A library is opened for each, which is slow. */
    TRIP_FILE
  }

  private static final List<Target> QUICK =
      List.of(
          Target.OWN_TABLE, Target.FOREIGN_TABLE, Target.MAPPING, Target.PROPOSAL, Target.TRACK);

  /** One in so many is a trip file. */
  private static final int TRIP_FILES_SHARE = 100;

  /** {@code -Dfuzz.target=TRACK} searches one kind alone. */
  private static final Optional<Target> ONLY =
      Optional.ofNullable(System.getProperty("fuzz.target")).map(Target::valueOf);

  private static final Map<Target, Integer> EXECUTIONS = new EnumMap<>(Target.class);
  private static final Path FILE = file();

  @FuzzTest(maxDuration = "60s")
  void whateverComesIn(FuzzedDataProvider data) throws Exception {
    Target target = ONLY.orElseGet(() -> any(data));
    EXECUTIONS.merge(target, 1, Integer::sum);
    try {
      take(target, data, FILE);
    } catch (TableException | LibraryException refusedInWords) {
      requireWords(refusedInWords);
    }
  }

  @AfterAll
  static void tellExecutions() {
    System.out.println("Executions: " + EXECUTIONS);
  }

  private static Target any(FuzzedDataProvider data) {
    return data.consumeInt(1, TRIP_FILES_SHARE) == 1
        ? Target.TRIP_FILE
        : QUICK.get(data.consumeInt(0, QUICK.size() - 1));
  }

  private static void take(Target target, FuzzedDataProvider data, Path file) throws Exception {
    switch (target) {
      case OWN_TABLE -> read(TripTable.open(written(file, OWN, data)));
      case FOREIGN_TABLE -> read(TripTable.open(written(file, FOREIGN, data), mapping(MAP), ZONE));
      case MAPPING -> {
        MappingText map = mapping(new String(spoiled(bytes(MAP), data), StandardCharsets.UTF_8));
        read(TripTable.open(written(file, FOREIGN, data), map, ZONE));
      }
      case PROPOSAL -> MappingProposal.of(written(file, FOREIGN, data));
      case TRACK -> GpxFile.read(written(file, GPX, data));
      case TRIP_FILE -> {
        Files.write(file, spoiled(TRIP, data));
        try (PortableTrip trip = TripFile.open(file)) {
          trip.summary();
        }
      }
    }
  }

  private static void read(IncomingTable table) throws TableException {
    table.<RuntimeException>read(sample -> {}, TransferWatch.NONE);
  }

  private static MappingText mapping(String toml) {
    return new MappingText("map.toml", toml, true);
  }

  private static Path written(Path file, String text, FuzzedDataProvider data) throws Exception {
    return Files.write(file, spoiled(bytes(text), data));
  }

  /** Bytes put in or written over, at places and of lengths that the search chooses. */
  private static byte[] spoiled(byte[] good, FuzzedDataProvider data) {
    byte[] bytes = good;
    for (int count = data.consumeInt(1, MOST_SPOILED); count > 0; count--) {
      int from = data.consumeInt(0, bytes.length);
      int left = Math.min(bytes.length, from + data.consumeInt(0, MOST_BYTES));
      byte[] put = data.consumeBytes(data.consumeInt(0, MOST_BYTES));
      ByteArrayOutputStream joined = new ByteArrayOutputStream();
      joined.writeBytes(Arrays.copyOfRange(bytes, 0, from));
      joined.writeBytes(put);
      joined.writeBytes(Arrays.copyOfRange(bytes, left, bytes.length));
      bytes = joined.toByteArray();
    }
    return bytes;
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static void requireWords(Exception refused) {
    String message = String.valueOf(refused.getMessage());
    if (!message.contains("xpected") || message.length() > 20_000) {
      throw new AssertionError("Refused, but not in words: " + message, refused);
    }
  }

  /** One file, written over again and again, in memory where the system offers that. */
  private static Path file() {
    try {
      Path memory = Path.of("/dev/shm");
      Path file =
          Files.isWritable(memory)
              ? Files.createTempFile(memory, "fuzzed", ".csv")
              : Files.createTempFile("fuzzed", ".csv");
      file.toFile().deleteOnExit();
      return file;
    } catch (IOException e) {
      throw new AssertionError("A file to spoil", e);
    }
  }

  private static byte[] trip() {
    try {
      Path folder = Files.createTempDirectory("fuzzed");
      try (TripLibrary library = TripLibrary.open(folder)) {
        Vehicle vehicle = Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR);
        NewTrip trip = new NewTrip(vehicle, Instant.EPOCH, "", "a table", "1");
        Iterable<Sample> samples =
            Arrays.asList(
                new Sample(Channels.VEHICLE_SPEED, 0, 80), new Sample(Channels.GEAR, 9, 3));
        String id = library.keep(trip, samples, 10);
        Path file = folder.resolve("x.trip");
        TripFile.write(library, library.find(id), file, ExportChoice.ALL, TransferWatch.NONE);
        return Files.readAllBytes(file);
      }
    } catch (Exception e) {
      throw new AssertionError("A trip file to spoil", e);
    }
  }
}
