package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channel;
import steadypull.channel.Sample;

/**
 * How long the list of a large library takes, beside the usual way of keeping a trip's channels: a
 * table of pairs, joined. Prints a line for the guide.
 */
@Tag("bench")
class TripListBenchTest {
  private static final int TRIPS = 10_000;
  private static final int CHANNELS = 20;
  private static final int RUNS = 15;
  private static final double MOST_MILLIS = 100;

  @TempDir Path folder;

  @Test
  void tenThousandTripsAreListedInATenthOfASecond() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      fill(library);
      assertThat(library.trips(Optional.empty())).hasSize(TRIPS);
      makePairs();

      Cost list = cost(() -> library.trips(Optional.empty()));
      Cost found = cost(() -> library.trips(Optional.of("ramp 77")));
      Cost joined = cost(this::readPairs);

      System.out.printf(
          Locale.ROOT,
          "| list %d trips of %d channels | %s | with --find %s | the channels alone, by a join %s"
              + " |%n",
          TRIPS,
          CHANNELS,
          list,
          found,
          joined);
      assertThat(list.processorMillis).isLessThan(MOST_MILLIS);
      assertThat(found.processorMillis).isLessThan(MOST_MILLIS);
    }
  }

  private static void fill(TripLibrary library) throws LibraryException {
    List<Channel> channels =
        IntStream.range(0, CHANNELS)
            .mapToObj(number -> new Channel("channel_" + (char) ('a' + number), "degC"))
            .toList();
    Instant start = Instant.parse("2024-01-01T06:00:00Z");
    library.<Boolean, LibraryException>addTrips(
        adder -> {
          for (int trip = 0; trip < TRIPS; trip++) {
            AddedTrip added = adder.begin(trip(trip, start.plus(Duration.ofHours(2L * trip))));
            for (int sample = 0; sample < CHANNELS; sample++) {
              added.append(new Sample(channels.get(sample), sample, trip));
            }
            added.append(new Sample(channels.getFirst(), 9_000_000, trip));
            added.seal(10_000_000);
          }
          return true;
        });
  }

  private static NewTrip trip(int number, Instant start) {
    TripDetails details =
        TripDetails.ofLabel(number % 2 == 0 ? "baseline" : "after")
            .withNote("Run number " + number + ", calm and dry.")
            .withTags(List.of("ramp " + number % 100));
    return new NewTrip(
        TripFiles.WATTLE, start, Optional.of(ZoneOffset.ofHours(2)), details, "x", "0.1.0");
  }

  private void makePairs() throws SQLException {
    TripFiles.tamper(
        LibraryFile.in(folder),
        "create table pair (trip_key integer, position integer, channel_key integer,"
            + " primary key (trip_key, position)) without rowid",
        "insert into pair select trip_key, channel_key, channel_key from trip, channel");
  }

  private int readPairs() throws SQLException {
    List<Channel> channels = new ArrayList<>();
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + LibraryFile.in(folder));
        Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery(
                "select channel.id, channel.unit from trip join pair using (trip_key)"
                    + " join channel using (channel_key) order by trip_key, position")) {
      while (rows.next()) {
        channels.add(new Channel(rows.getString(1), rows.getString(2)));
      }
    }
    return channels.size();
  }

  /** Medians; the first runs warm up and are left out. */
  private static Cost cost(Callable<?> work) throws Exception {
    double[] wall = new double[RUNS];
    double[] processor = new double[RUNS];
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    for (int run = -RUNS; run < RUNS; run++) {
      long begun = System.nanoTime();
      long busy = threads.getCurrentThreadCpuTime();
      assertThat(work.call()).isNotNull();
      if (run >= 0) {
        processor[run] = (threads.getCurrentThreadCpuTime() - busy) / 1e6;
        wall[run] = (System.nanoTime() - begun) / 1e6;
      }
    }
    Arrays.sort(wall);
    Arrays.sort(processor);
    return new Cost(wall[RUNS / 2], processor[RUNS / 2]);
  }

  /**
   * Processor time is the thread's own; the wall's clock also counts who else wants the machine.
   */
  private record Cost(double wallMillis, double processorMillis) {
    @Override
    public String toString() {
      return String.format(Locale.ROOT, "%.0f ms (processor %.0f ms)", wallMillis, processorMillis);
    }
  }
}
