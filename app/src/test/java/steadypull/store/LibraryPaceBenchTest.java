package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channel;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * How fast a library takes a drive of 10 h with 20 channels at 5 Hz and shows it, beside one row a
 * sample in the same database: {@code mvn -q -Pbench}. Prints processor time of the thread and time
 * on the wall.
 */
@Tag("bench")
class LibraryPaceBenchTest {
  private static final int CHANNELS = 20;
  private static final long STEP_MICROS = 200_000;
  private static final int STEPS = 10 * 3_600 * 5;
  private static final int COLUMNS = 1_280;
  private static final long END_MICROS = STEPS * STEP_MICROS;
  private static final int STEPS_PER_COMMIT = 5;
  private static final int ZOOMS = 100;

  /** The longest window that is drawn from samples, with as many columns as these: 4 s each. */
  private static final long HARDEST_MICROS = 4_000_000L * COLUMNS - 1;

  private static final List<Channel> NAMES =
      IntStream.range(0, CHANNELS)
          .mapToObj(number -> new Channel("channel_" + (char) ('a' + number), "degC"))
          .toList();

  @TempDir Path folder;

  private interface Work {
    void run() throws Exception;
  }

  private record Cost(double processorSeconds, double wallSeconds) {
    static Cost of(Work work) throws Exception {
      long cpu = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      long wall = System.nanoTime();
      work.run();
      return new Cost(
          (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpu) / 1e9,
          (System.nanoTime() - wall) / 1e9);
    }

    String millis() {
      return String.format(
          Locale.ROOT, "%.1f ms (%.1f on the wall)", processorSeconds * 1e3, wallSeconds * 1e3);
    }

    String pace() {
      double samples = (double) STEPS * CHANNELS;
      return String.format(
          Locale.ROOT,
          "%.2f M samples/s (%.2f on the wall)",
          samples / processorSeconds / 1e6,
          samples / wallSeconds / 1e6);
    }
  }

  @Test
  void printPaces() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      String[] id = new String[1];
      Cost commits = Cost.of(() -> id[0] = record(library));
      Cost adding = Cost.of(() -> library.addTrips(LibraryPaceBenchTest::add));
      Cost rows = Cost.of(this::rows);
      print("recorded, a commit each second of the trip", commits.pace());
      print("added in one transaction", adding.pace());
      print("one row a sample, in one transaction", rows.pace());
      print("file, bytes", String.valueOf(Files.size(folder.resolve("library.sqlite"))));
      printLines(library, id[0]);
    }
  }

  private void printLines(TripLibrary library, String id) throws Exception {
    for (int round = 0; round < 5; round++) {
      Cost open =
          Cost.of(
              () -> {
                try (TripDrawing drawing = library.draw(id)) {
                  draw(drawing, 0, END_MICROS);
                }
              });
      print("10 h opened, round " + round, open.millis());
    }
    Cost rows = Cost.of(this::overviewOfRows);
    print("10 h from one row a sample", rows.millis());
    SplittableRandom random = new SplittableRandom(5);
    try (TripDrawing drawing = library.draw(id)) {
      draw(drawing, 0, END_MICROS);
      Cost[] zooms = new Cost[ZOOMS];
      for (int zoom = 0; zoom < ZOOMS; zoom++) {
        long width = (long) (1e6 * Math.exp(random.nextDouble(Math.log(10), Math.log(36_000))));
        long from = random.nextLong(END_MICROS - width);
        zooms[zoom] = Cost.of(() -> draw(drawing, from, from + width));
      }
      Arrays.sort(zooms, (a, b) -> Double.compare(a.wallSeconds, b.wallSeconds));
      print("a window, median", zooms[ZOOMS / 2].millis());
      print("a window, 95 of 100", zooms[ZOOMS * 95 / 100].millis());
      print("a window, worst", zooms[ZOOMS - 1].millis());
    }
    printHardest(library, id, random);
  }

  /** Windows that take the most samples, nobody having looked at any of them. */
  private static void printHardest(TripLibrary library, String id, SplittableRandom random)
      throws Exception {
    Cost[] zooms = new Cost[ZOOMS];
    Cost[] bounds = new Cost[ZOOMS];
    for (int zoom = 0; zoom < ZOOMS; zoom++) {
      long from = random.nextLong(END_MICROS - HARDEST_MICROS);
      try (TripDrawing drawing = library.draw(id)) {
        draw(drawing, 0, END_MICROS);
        bounds[zoom] = Cost.of(() -> drawKnown(drawing, from, from + HARDEST_MICROS));
        zooms[zoom] = Cost.of(() -> draw(drawing, from, from + HARDEST_MICROS));
      }
    }
    Arrays.sort(zooms, (a, b) -> Double.compare(a.wallSeconds, b.wallSeconds));
    print("85 min nobody has looked at, median", zooms[ZOOMS / 2].millis());
    print("85 min nobody has looked at, 95 of 100", zooms[ZOOMS * 95 / 100].millis());
    print("85 min nobody has looked at, worst", zooms[ZOOMS - 1].millis());
    Arrays.sort(bounds, (a, b) -> Double.compare(a.wallSeconds, b.wallSeconds));
    print("what is known of it at once, median", bounds[ZOOMS / 2].millis());
    print("what is known of it at once, worst", bounds[ZOOMS - 1].millis());
  }

  private static void draw(TripDrawing drawing, long from, long to) throws LibraryException {
    for (int channel = 0; channel < CHANNELS; channel++) {
      assertThat(drawing.line(channel, from, to, COLUMNS).columns()).isEqualTo(COLUMNS);
    }
  }

  private static void drawKnown(TripDrawing drawing, long from, long to) throws LibraryException {
    for (int channel = 0; channel < CHANNELS; channel++) {
      assertThat(drawing.known(channel, from, to, COLUMNS).isExact()).isFalse();
    }
  }

  private static void print(String what, String figure) {
    System.out.printf(Locale.ROOT, "%-45s %s%n", what, figure);
  }

  private static NewTrip trip() {
    return new NewTrip(
        Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR),
        Instant.parse("2026-07-15T17:45:12Z"),
        "",
        "bench",
        "0.1.0");
  }

  private static String record(TripLibrary library) throws LibraryException {
    SplittableRandom random = new SplittableRandom(1);
    try (TripRecorder recorder = library.begin(trip())) {
      for (int step = 0; step < STEPS; step++) {
        for (int channel = 0; channel < CHANNELS; channel++) {
          recorder.append(sample(random, step, channel));
        }
        if (step % STEPS_PER_COMMIT == 0) {
          recorder.commit(step * STEP_MICROS);
        }
      }
      recorder.seal(END_MICROS);
      return recorder.tripId();
    }
  }

  private static String add(TripAdder adder) {
    SplittableRandom random = new SplittableRandom(1);
    AddedTrip trip = adder.begin(trip());
    for (int step = 0; step < STEPS; step++) {
      for (int channel = 0; channel < CHANNELS; channel++) {
        trip.append(sample(random, step, channel));
      }
    }
    return trip.seal(END_MICROS);
  }

  private static Sample sample(SplittableRandom random, int step, int channel) {
    long jitter = channel % 4 == 0 ? random.nextLong(4_000) : 0;
    double value = Math.rint(80 + 20 * Math.sin(step / (500.0 + channel)) + random.nextInt(3));
    return new Sample(NAMES.get(channel), step * STEP_MICROS + channel * 5_000L + jitter, value);
  }

  private void rows() throws Exception {
    SplittableRandom random = new SplittableRandom(1);
    try (Connection connection = connectRows();
        Statement statement = connection.createStatement()) {
      statement.execute(
          "create table sample (trip, sequence, time, channel, value, primary key (trip, sequence))"
              + " without rowid");
      connection.setAutoCommit(false);
      try (PreparedStatement insert =
          connection.prepareStatement("insert into sample values (1, ?, ?, ?, ?)")) {
        for (int number = 0; number < STEPS * CHANNELS; number++) {
          Sample sample = sample(random, number / CHANNELS, number % CHANNELS);
          insert.setLong(1, number);
          insert.setLong(2, sample.timeMicros());
          insert.setInt(3, number % CHANNELS);
          insert.setDouble(4, sample.value());
          insert.addBatch();
          if (number % 10_000 == 0) {
            insert.executeBatch();
          }
        }
        insert.executeBatch();
      }
      connection.commit();
    }
  }

  private void overviewOfRows() throws Exception {
    try (Connection connection = connectRows();
        Statement statement = connection.createStatement();
        ResultSet columns =
            statement.executeQuery(
                "select channel, time * %d / %d, min(value), max(value) from sample group by 1, 2"
                    .formatted(COLUMNS, END_MICROS))) {
      int count = 0;
      while (columns.next()) {
        count++;
      }
      assertThat(count).isGreaterThanOrEqualTo(CHANNELS * COLUMNS);
    }
  }

  private Connection connectRows() throws Exception {
    return DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("rows.sqlite"));
  }
}
