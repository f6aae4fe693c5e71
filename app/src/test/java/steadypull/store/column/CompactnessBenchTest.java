package steadypull.store.column;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/** Prints the bytes of a sample in our segments beside other forms: {@code mvn -q -Pbench}. */
@Tag("bench")
class CompactnessBenchTest {
  @TempDir private Path folder;

  @Test
  void printPolledDrives() throws Exception {
    print(PolledTrips.polled(6, 40));
  }

  @Test
  void printDemoSeason() throws Exception {
    print(new SeasonTrips());
  }

  @Test
  @EnabledIfSystemProperty(named = OpenDrives.PROPERTY, matches = ".+")
  void printOpenDrives() throws Exception {
    print(OpenDrives.ofProperty());
  }

  private void print(MeasuredTrips trips) throws IOException, SQLException {
    Compactness compactness = new Compactness(trips, folder);
    long samples = compactness.samples();
    System.out.printf(Locale.ROOT, "%n%s, %d samples%n", trips.name(), samples);
    row("segments and overviews in SQLite", compactness.segments(), samples);
    row("a row per sample in SQLite", compactness.rows(), samples);
    row("trip tables (CSV)", compactness.tables(false), samples);
    row("trip tables, gzip", compactness.tables(true), samples);
    row("Parquet, zstd, by arrival", compactness.parquet("trip, sequence"), samples);
    row("Parquet, zstd, by channel", compactness.parquet("trip, channel, sequence"), samples);
  }

  private static void row(String form, long octets, long samples) {
    System.out.printf(
        Locale.ROOT, "%-34s %11d bytes %7.2f a sample%n", form, octets, octets / (double) samples);
  }
}
