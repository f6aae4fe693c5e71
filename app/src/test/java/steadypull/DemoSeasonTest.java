package steadypull;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.cli.SteadypullCommand;
import steadypull.store.TripEntry;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/** The demo season as a library. */
@Execution(ExecutionMode.CONCURRENT)
class DemoSeasonTest {
  @TempDir static Path folder;

  private static List<String> ids = List.of();

  @BeforeAll
  static void take() {
    ids = ids(type("import", "demo:season"));
  }

  /** The bound is ours: years of drives on one tablet. The whole length of the file counts. */
  @Test
  void theLibraryTakesAtMostTwoBytesASample() throws Exception {
    long samples = trips().stream().mapToLong(TripSummary::samples).sum();
    long bytes = Files.size(folder.resolve("library.sqlite"));

    assertThat(samples).isGreaterThan(5_000_000);
    assertThat((double) bytes / samples).isLessThanOrEqualTo(2.0);
  }

  @Test
  void everyTripTellsWhatTheWorkshopSaidOfIt() throws Exception {
    assertThat(ids).hasSizeBetween(40, 80).doesNotHaveDuplicates();
    assertThat(trips()).allSatisfy(trip -> assertThat(trip.sealed()).isTrue());
    assertThat(trips()).allSatisfy(trip -> assertThat(trip.offset()).isPresent());
    assertThat(trips()).extracting(TripSummary::label).contains("baseline", "after");
    assertThat(trips()).anySatisfy(trip -> assertThat(trip.gaps()).isNotEmpty());
    assertThat(trips()).anySatisfy(trip -> assertThat(trip.details().fitted()).isNotEmpty());
  }

  @Test
  void marksAndLostLinksAreEventsOfTheTrips() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      long marks = 0;
      for (String id : ids) {
        long[] counted = {0};
        library.replay(
            id,
            entry -> {
              if (entry instanceof TripEntry.OfEvent(TripEvent event)
                  && event.kind() == TripEvent.Kind.MARK) {
                counted[0]++;
              }
            });
        marks += counted[0];
      }
      assertThat(marks).isPositive();
    }
  }

  @Test
  void itIsTakenOnce() throws Exception {
    assertThat(ids(type("import", "demo:season?seed=1"))).isEqualTo(ids);
    assertThat(trips()).hasSize(ids.size());
  }

  @Test
  void aWrongSeedIsNamed() {
    assertThat(type("import", "demo:season?seed=x")).contains("demo:season?seed=1");
  }

  /** What was said beside the ids, such as that roads were learned, is left aside. */
  private static List<String> ids(String said) {
    return said.lines().filter(line -> line.matches("\\d{8}T\\d{6}Z-\\w+")).toList();
  }

  private static List<TripSummary> trips() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      return library.trips(Optional.empty());
    }
  }

  private static String type(String... arguments) {
    StringWriter said = new StringWriter();
    PrintWriter out = new PrintWriter(said);
    String[] all = new String[arguments.length + 2];
    all[0] = "--library";
    all[1] = folder.toString();
    System.arraycopy(arguments, 0, all, 2, arguments.length);
    SteadypullCommand.run(Steadypull.program(), out, out, all);
    return said.toString();
  }
}
