package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A library that an earlier program has left opens with everything that is in it. The second form
 * was written by the program of 25 November 2026, the first is the same with what the second added
 * taken out; the table is what that program exported. The third is the second as the program of 28
 * November 2026 left it, which took a route in besides; the fourth is the third as the next program
 * of that day left it, in which somebody keeps a place out of the memory of roads; the fifth is the
 * fourth as the program after that left it.
 */
class OlderLibrariesTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "library-v1.sqlite.gz",
        "library-v2.sqlite.gz",
        "library-v3.sqlite.gz",
        "library-v4.sqlite.gz",
        "library-v5.sqlite.gz"
      })
  void everyOlderFormOpensWithEverythingThatIsInIt(String resource) throws Exception {
    Files.write(folder.resolve("library.sqlite"), resource(resource));

    try (TripLibrary library = TripLibrary.open(folder)) {
      TripSummary trip = library.trips(Optional.empty()).getFirst();
      assertThat(trip.id()).isEqualTo(trip.origin()).startsWith("20261128T054040Z-");
      assertThat(trip.vehicleName()).isEqualTo("Fixture van");
      assertThat(library.vehicleOf(trip.id()))
          .isEqualTo(library.vehicle("Fixture van").orElseThrow());
      assertThat(trip.durationSeconds()).isEqualTo(90);
      assertThat(trip.sealed()).isTrue();
      assertThat(trip.samples()).isEqualTo(3885);
      assertThat(trip.source()).isEqualTo("demo:long-hot-grade?speed=max");

      List<TripEntry> entries = new ArrayList<>();
      library.replay(trip.id(), entries::add);
      assertThat(entries.stream().filter(TripEntry.OfSample.class::isInstance)).hasSize(3885);
      // The link that connected, the advice and what was shown, each where it was.
      assertThat(entries.getFirst()).isInstanceOf(TripEntry.OfEvent.class);
      assertThat(library.roads().quietPlaces()).hasSize(resource.matches(".*v[45].*") ? 1 : 0);
      assertThat(library.comparisons().all()).isEmpty();
      assertThat(library.heat().waiting()).as("its trip can still teach").isEqualTo(1);
      assertThat(cells(entries))
          .isEqualTo(cells(new String(resource("library-v1-v2.csv.gz"), StandardCharsets.UTF_8)));
    }
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(library.trips(Optional.empty())).hasSize(1);
    }
  }

  /** {@code header at time = value} of every sample, in no order. */
  private static List<String> cells(List<TripEntry> entries) {
    return entries.stream()
        .filter(TripEntry.OfSample.class::isInstance)
        .map(entry -> ((TripEntry.OfSample) entry).sample())
        .map(sample -> sample.channel().header() + sample.timeMicros() / 1e6 + sample.value())
        .sorted()
        .toList();
  }

  private static List<String> cells(String table) {
    List<String> lines = table.lines().toList();
    String[] header = lines.getFirst().split(",", -1);
    List<String> cells = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      String[] row = line.split(",", -1);
      for (int column = 1; column < row.length; column++) {
        if (!row[column].isEmpty()) {
          cells.add(header[column] + Double.valueOf(row[0]) + Double.valueOf(row[column]));
        }
      }
    }
    return cells.stream().sorted().toList();
  }

  private static byte[] resource(String name) throws Exception {
    try (InputStream packed = OlderLibrariesTest.class.getResourceAsStream(name);
        GZIPInputStream unpacked = new GZIPInputStream(packed)) {
      return unpacked.readAllBytes();
    }
  }
}
