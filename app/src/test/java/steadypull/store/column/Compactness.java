package steadypull.store.column;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.GZIPOutputStream;

/**
 * The same samples in several forms of file, in a folder. Every file is closed as a user would have
 * it; its length is what counts.
 */
final class Compactness {
  /** As the library sets it. */
  private static final int SEGMENT_SAMPLES = 32_768;

  private final MeasuredTrips trips;
  private final Path folder;

  Compactness(MeasuredTrips trips, Path folder) {
    this.trips = trips;
    this.folder = folder;
  }

  long samples() {
    long[] samples = new long[1];
    for (int trip = 0; trip < trips.count(); trip++) {
      trips.tell(trip, (channel, timeMicros, value) -> samples[0]++);
    }
    return samples[0];
  }

  /** Segments and overviews in one database file, without the rest of a library. */
  long segments() throws SQLException, IOException {
    Path file = folder.resolve("segments.sqlite");
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      execute(
          connection,
          "create table segment (trip integer, number integer, segment blob, overview blob,"
              + " primary key (trip, number))");
      connection.setAutoCommit(false);
      try (PreparedStatement insert =
          connection.prepareStatement("insert into segment values (?, ?, ?, ?)")) {
        for (int trip = 0; trip < trips.count(); trip++) {
          SegmentList segments = new SegmentList(SEGMENT_SAMPLES);
          trips.tell(trip, segments::add);
          segments.finish();
          for (int number = 0; number < segments.count(); number++) {
            insert.setInt(1, trip);
            insert.setInt(2, number);
            insert.setBytes(3, segments.segment(number));
            insert.setBytes(4, segments.overview(number));
            insert.executeUpdate();
          }
        }
      }
      connection.commit();
    }
    return Files.size(file);
  }

  /**
   * A row for each sample, without an index of its own, as trips are kept while they are driven.
   */
  long rows() throws SQLException, IOException {
    Path file = folder.resolve("rows.sqlite");
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      execute(
          connection,
          "create table sample (trip integer, sequence integer, time_micros integer, channel"
              + " integer, value real, primary key (trip, sequence)) without rowid");
      connection.setAutoCommit(false);
      try (PreparedStatement insert =
          connection.prepareStatement("insert into sample values (?, ?, ?, ?, ?)")) {
        for (int trip = 0; trip < trips.count(); trip++) {
          insertRows(insert, trip);
        }
      }
      connection.commit();
    }
    return Files.size(file);
  }

  private void insertRows(PreparedStatement insert, int trip) {
    long[] sequence = new long[1];
    trips.tell(
        trip,
        (channel, timeMicros, value) -> {
          try {
            insert.setInt(1, trip);
            insert.setLong(2, sequence[0]++);
            insert.setLong(3, timeMicros);
            insert.setInt(4, channel);
            insert.setDouble(5, value);
            insert.executeUpdate();
          } catch (SQLException e) {
            throw new IllegalStateException(e);
          }
        });
  }

  /** Trip tables: a row for each time, a column for each channel. */
  long tables(boolean isGzipped) throws IOException {
    long octets = 0;
    for (int trip = 0; trip < trips.count(); trip++) {
      Path file = folder.resolve("trip-" + trip + (isGzipped ? ".csv.gz" : ".csv"));
      try (PrintStream out = print(file, isGzipped)) {
        out.print("time[s]," + String.join(",", trips.headers()) + "\r\n");
        Map<Integer, Double> row = new TreeMap<>();
        long[] rowMicros = {-1};
        trips.tell(
            trip,
            (channel, timeMicros, value) -> {
              if (timeMicros != rowMicros[0]) {
                printRow(out, rowMicros[0], row);
                row.clear();
                rowMicros[0] = timeMicros;
              }
              row.put(channel, value);
            });
        printRow(out, rowMicros[0], row);
      }
      octets += Files.size(file);
    }
    return octets;
  }

  private void printRow(PrintStream out, long timeMicros, Map<Integer, Double> row) {
    if (row.isEmpty()) {
      return;
    }
    StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%.6f", timeMicros / 1e6));
    for (int channel = 0; channel < trips.headers().size(); channel++) {
      Double value = row.get(channel);
      line.append(',').append(value == null ? "" : text(value));
    }
    out.print(line.append("\r\n"));
  }

  private static String text(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e9
        ? Long.toString((long) value)
        : Double.toString(value);
  }

  /** A row for each sample in Parquet with zstd, in the order of arrival or by channel. */
  long parquet(String order) throws SQLException, IOException {
    Path table = folder.resolve("samples.csv");
    if (!Files.exists(table)) {
      printSamples(table);
    }
    Path file = folder.resolve("samples-by-" + order.replaceAll("\\W+", "-") + ".parquet");
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:")) {
      execute(connection, "set threads = 1");
      execute(
          connection,
          "copy (select * from read_csv('%s', header = true, columns = {'trip': 'INTEGER', 'sequence': 'INTEGER', 'channel': 'USMALLINT', 'time_micros': 'BIGINT', 'value': 'DOUBLE'}) order by %s) to '%s' (format parquet, compression zstd, parquet_version v2)"
              .formatted(table, order, file));
    }
    return Files.size(file);
  }

  private void printSamples(Path table) throws IOException {
    try (PrintStream out = print(table, false)) {
      out.print("trip,sequence,channel,time_micros,value\n");
      for (int trip = 0; trip < trips.count(); trip++) {
        int number = trip;
        int[] sequence = new int[1];
        trips.tell(
            trip,
            (channel, timeMicros, value) ->
                out.print(
                    number
                        + ","
                        + sequence[0]++
                        + ","
                        + channel
                        + ","
                        + timeMicros
                        + ","
                        + value
                        + "\n"));
      }
    }
  }

  private static PrintStream print(Path file, boolean isGzipped) throws IOException {
    OutputStream plain = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16);
    OutputStream out = isGzipped ? new GZIPOutputStream(plain, 1 << 16) : plain;
    return new PrintStream(new BufferedOutputStream(out, 1 << 16), false, StandardCharsets.UTF_8);
  }

  private static void execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }
}
