package steadypull.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import steadypull.channel.QuantityFormat;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/** Lists trips. */
@Command(name = "trips", mixinStandardHelpOptions = true, header = "Lists trips, newest first.")
final class TripsCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Option(
      names = "--find",
      paramLabel = "TEXT",
      description =
          "Only trips with that text in what was said of them, marks, channels or adapter.")
  private @Nullable String find;

  @Option(
      names = "--tag",
      paramLabel = "WORD",
      description = "Only trips with that tag; with all, if given several times.")
  private List<String> tags = new ArrayList<>();

  @Option(names = "--vehicle", paramLabel = "NAME", description = "Only trips of that vehicle.")
  private @Nullable String vehicle;

  @Option(names = "--json", description = "Prints an array of objects for machines.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    try (TripLibrary library = main.openLibraryToRead()) {
      List<TripSummary> trips =
          library.trips(Optional.ofNullable(find)).stream().filter(this::isWanted).toList();
      main.out().print(json ? TripJson.of(trips) + "\n" : asText(trips, main.format()));
      main.out().flush();
      if (trips.isEmpty() && !json) {
        main.err().println(whyNone(main));
      }
    }
    return 0;
  }

  private boolean isWanted(TripSummary trip) {
    String name = vehicle;
    return trip.details().tags().stream().map(TripsCommand::folded).toList().containsAll(tags())
        && (name == null || folded(trip.vehicleName()).equals(folded(name)));
  }

  private List<String> tags() {
    return tags.stream().map(TripsCommand::folded).toList();
  }

  private static String folded(String text) {
    return text.toLowerCase(Locale.ROOT);
  }

  private String asText(List<TripSummary> trips, QuantityFormat format) {
    StringBuilder text = new StringBuilder();
    trips.forEach(trip -> text.append(TripText.line(trip, format)).append('\n'));
    return text.toString();
  }

  private String whyNone(SteadypullCommand main) {
    if (find != null) {
      return "No trip matches \"" + find + "\".";
    }
    return tags.isEmpty() && vehicle == null
        ? "No trips in " + main.libraryFolder() + " yet. \"steadypull record\" makes one."
        : "No trip is tagged so, or of that vehicle.";
  }
}
