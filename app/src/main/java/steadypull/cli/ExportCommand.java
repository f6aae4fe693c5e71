package steadypull.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import steadypull.channel.Sample;
import steadypull.exchange.ExportChoice;
import steadypull.exchange.TripTable;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/** Writes a trip as a trip table. */
@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    header = "Writes a trip as a trip table (CSV).",
    description = "Derived channels such as road_grade are written too.")
final class ExportCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Parameters(paramLabel = "TRIP", description = "Id of the trip, or a unique beginning of it.")
  private String trip = "";

  @Option(
      names = "--to",
      required = true,
      paramLabel = "FILE",
      converter = PlainText.Place.class,
      description = "Where to write, such as trip.csv.")
  private Path to = Path.of("");

  @Option(names = "--measured-only", description = "Leaves out the derived channels.")
  private boolean measuredOnly;

  @Option(names = "--no-positions", description = "Leaves out latitude and longitude.")
  private boolean noPositions;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    try (TripLibrary library = main.openLibrary()) {
      TripSummary summary = library.find(trip);
      ExportChoice choice = new ExportChoice(measuredOnly, noPositions);
      List<Sample> samples = new ArrayList<>();
      library.replay(
          summary.id(),
          entry -> {
            if (entry instanceof TripEntry.OfSample(Sample sample)
                && choice.includes(sample.channel())) {
              samples.add(sample);
            }
          });
      TripTable.write(to, samples, choice);
      main.err().printf("Wrote %d samples to %s.%n", samples.size(), to);
    }
    return 0;
  }
}
