package steadypull.cli;

import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import steadypull.drive.DriveEnd;
import steadypull.drive.DriveOutcome;
import steadypull.drive.DriveRequest;
import steadypull.drive.LiveDrives;
import steadypull.drive.Pace;
import steadypull.drive.PipelineOutput;
import steadypull.drive.RawCapture;
import steadypull.drive.RunningDrive;
import steadypull.road.memory.RouteLine;
import steadypull.store.TripDetails;
import steadypull.store.TripLibrary;

/** Logs a drive without a window. */
@Command(
    name = "record",
    mixinStandardHelpOptions = true,
    header = "Logs a drive without a window.",
    description =
        "Records until Ctrl-C, or for as long as --for says. What happens is told on standard error"
            + " as it happens; a trip's id is printed on standard output at its end. An engine that"
            + " is off for three minutes ends the trip, and the next start begins another.")
final class RecordCommand implements Callable<Integer> {
  private static final String CAPTURES = "captures";

  @ParentCommand private @Nullable SteadypullCommand parent;

  @Spec private @Nullable CommandSpec spec;

  @Option(
      names = "--port",
      required = true,
      paramLabel = "PORT",
      description = {
        "A device, tcp://host:port, capture:FILE[?speed=20],",
        "or demo:SCENARIO[?speed=20&seed=1]."
      })
  private String port = "";

  @Option(
      names = "--vehicle",
      required = true,
      paramLabel = "NAME",
      converter = PlainText.Name.class,
      description = "Name of the vehicle; a new name makes a new one with cautious limits.")
  private String vehicle = "";

  @Option(
      names = "--for",
      paramLabel = "DURATION",
      converter = Span.class,
      description = "How long to record, from the first reading: 90s, 15m or 2h.")
  private @Nullable Duration length;

  @Option(
      names = "--pace",
      paramLabel = "PACE",
      converter = WordOption.PaceWord.class,
      description = {
        "polite (the default) keeps the load on the vehicle's",
        "bus low; full asks as fast as the link allows."
      })
  private Pace pace = Pace.POLITE;

  @Mixin private DetailOptions details = new DetailOptions();

  @Mixin private MassOptions masses = new MassOptions();

  @Option(
      names = "--receiver",
      paramLabel = "PORT",
      description =
          "A satellite receiver that speaks NMEA 0183: a device, "
              + "tcp://host:port, or demo-receiver:SCENARIO[?speed=20].")
  private @Nullable String receiver;

  @Mixin private RouteOption route = new RouteOption();

  @Option(
      names = "--raw",
      description =
          "Also keeps the bytes of the dialogue with the adapter, "
              + "in a file beside the library, to be replayed as a port: "
              + "capture:FILE. The vehicle's number is masked in it.")
  private boolean raw;

  @Option(names = "--raw-with-vin", description = "The same with the vehicle's number as it is.")
  private boolean rawWithVin;

  @Option(names = "--quiet", description = "Tells only troubles.")
  private boolean quiet;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    main.requireAddresses(Optional.of(port), Optional.ofNullable(receiver));
    Optional<RouteLine> followed =
        route.read(
            Objects.requireNonNull(spec).commandLine(),
            receiver != null,
            main.format(),
            main.err());
    try (TripLibrary library = main.openLibrary()) {
      LiveDrives usual = main.drives(library);
      LiveDrives drives = followed.map(usual::following).orElse(usual);
      // A simulated drive ends with its scenario; a real vehicle may start again any time.
      DriveEnd end = new DriveEnd(Optional.ofNullable(length), true);
      PipelineOutput observer =
          quiet
              ? new DriveTroubles(main.err(), main.format())
              : new DriveProgress(main.err(), main.format());
      RunningDrive drive =
          drives.begin(
              new DriveRequest(
                  port,
                  vehicle,
                  masses.masses(),
                  details.applyTo(TripDetails.NONE),
                  pace,
                  end,
                  Optional.ofNullable(receiver),
                  capture(main)),
              new EndedTrips(main.out(), main.err(), observer));
      int status = StoppableDrive.await(drive, outcome -> report(main, outcome));
      library.roads().awaitLearned();
      library.heat().awaitLearned();
      return status;
    }
  }

  private Optional<RawCapture> capture(SteadypullCommand main) {
    return raw || rawWithVin
        ? Optional.of(new RawCapture(main.libraryFolder().resolve(CAPTURES), rawWithVin))
        : Optional.empty();
  }

  private static int report(SteadypullCommand main, DriveOutcome outcome) {
    outcome.tripId().ifPresent(main.out()::println);
    main.out().flush();
    Optional<String> failure = DriveVerdict.failure(outcome);
    failure.ifPresent(main.err()::println);
    main.err().flush();
    return failure.isPresent() ? 1 : 0;
  }
}
