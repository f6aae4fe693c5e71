package steadypull.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import steadypull.channel.Channel;
import steadypull.channel.QuantityFormat;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/** Lists trips. */
@Command(name = "trips", mixinStandardHelpOptions = true, header = "Lists trips, newest first.")
final class TripsCommand implements Callable<Integer> {
  private static final ObjectMapper JSON = new ObjectMapper();

  @ParentCommand private @Nullable SteadypullCommand parent;

  @Option(
      names = "--find",
      paramLabel = "TEXT",
      description = "Only trips whose vehicle, label or id contains the text.")
  private @Nullable String find;

  @Option(names = "--json", description = "Prints an array of objects for machines.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    try (TripLibrary library = main.openLibraryToRead()) {
      List<TripSummary> trips = library.trips(Optional.ofNullable(find));
      main.out().print(json ? asJson(trips) + "\n" : asText(trips, main.format()));
      main.out().flush();
      if (trips.isEmpty() && !json) {
        main.err()
            .println(
                find == null
                    ? "No trips in "
                        + main.libraryFolder()
                        + " yet. \"steadypull record\" makes one."
                    : "No trip matches \"" + find + "\".");
      }
    }
    return 0;
  }

  private static String asText(List<TripSummary> trips, QuantityFormat format) {
    StringBuilder text = new StringBuilder();
    for (TripSummary trip : trips) {
      text.append(
          String.format(
              Locale.ROOT,
              "%-24s  %-20s  %8s  %9s  %8d samples%s%s%n",
              trip.id(),
              trip.vehicleName(),
              format.elapsed((long) trip.durationSeconds()),
              distance(trip, format),
              trip.samples(),
              trip.sealed() ? "" : "  unfinished",
              trip.label().isEmpty() ? "" : "  " + trip.label()));
    }
    return text.toString();
  }

  private static String distance(TripSummary trip, QuantityFormat format) {
    return trip.distanceMetres().isPresent()
        ? format.distance(trip.distanceMetres().getAsDouble())
        : "";
  }

  private static String asJson(List<TripSummary> trips) {
    ArrayNode array = JSON.createArrayNode();
    trips.forEach(trip -> describe(trip, array.addObject()));
    return array.toString();
  }

  private static void describe(TripSummary trip, ObjectNode node) {
    node.put("id", trip.id());
    node.put("vehicle", trip.vehicleName());
    node.put("start", DateTimeFormatter.ISO_INSTANT.format(trip.start()));
    node.put("duration_s", trip.durationSeconds());
    trip.distanceMetres()
        .ifPresent(metres -> node.put("distance_m", Math.round(metres * 10) / 10.0));
    node.put("samples", trip.samples());
    ArrayNode channels = node.putArray("channels");
    trip.channels().stream().map(Channel::id).forEach(channels::add);
    ArrayNode gaps = node.putArray("gaps");
    trip.gaps().forEach(gap -> gaps.addArray().add(gap.fromSeconds()).add(gap.toSeconds()));
    node.put("sealed", trip.sealed());
    node.put("label", trip.label());
  }
}
