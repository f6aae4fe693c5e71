package steadypull.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import steadypull.advice.RuleBook;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.DriveException;
import steadypull.drive.DriveWords;
import steadypull.drive.LiveDrives;
import steadypull.drive.WrongAddressException;
import steadypull.exchange.TableException;
import steadypull.road.memory.RouteLine;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;

/**
 * The program's command line. Without a command it opens the window. {@link #run} is the one entry;
 * it returns the exit status: 0 done, 1 failed with a reason on standard error, 2 wrong usage.
 */
@Command(
    name = "steadypull",
    mixinStandardHelpOptions = true,
    versionProvider = SteadypullCommand.Version.class,
    header = "Logs towing drives and says early which temperature reaches its limit.",
    description = {
      "Without a command it opens the window. Results of commands go to standard output,"
          + " diagnostics to standard error. Exit status: 0 done, 1 failed with the reason, 2 wrong"
          + " usage."
    },
    footerHeading = "%n",
    footer =
        "A passenger operates it, never the driver. The vehicle's own warnings, the maker's"
            + " ratings, local codes and licensed workshops come first. It only reads from the"
            + " vehicle.",
    subcommands = {
      AdviseCommand.class,
      BackupCommand.class,
      CheckCommand.class,
      ClimbsCommand.class,
      CompareCommand.class,
      ExportCommand.class,
      ForgetCommand.class,
      ImportCommand.class,
      PortsCommand.class,
      RecordCommand.class,
      RehearseCommand.class,
      ReportCommand.class,
      RestoreCommand.class,
      RoadLoadCommand.class,
      RulesCommand.class,
      ScenariosCommand.class,
      TripCommand.class,
      TripsCommand.class,
      VehicleCommand.class
    })
public final class SteadypullCommand implements Callable<Integer> {
  private final Program program;

  @Spec private @Nullable CommandSpec spec;

  @Option(
      names = "--library",
      paramLabel = "DIR",
      scope = ScopeType.INHERIT,
      converter = PlainText.Place.class,
      description = {
        "Folder of the library; else $STEADYPULL_LIBRARY,",
        "else the platform's place for application data."
      })
  private @Nullable Path library;

  @Option(
      names = "--language",
      paramLabel = "TAG",
      scope = ScopeType.INHERIT,
      converter = WordOption.Language.class,
      description = "Language of advice: en (the default) or de.")
  private Locale language = Locale.ENGLISH;

  @Option(
      names = "--units",
      paramLabel = "SYSTEM",
      scope = ScopeType.INHERIT,
      converter = WordOption.Units.class,
      description = {
        "Units of what people read: metric (the default) or",
        "imperial; files and JSON stay metric."
      })
  private UnitSystem units = UnitSystem.METRIC;

  @Option(
      names = "--port",
      paramLabel = "PORT",
      description = {
        "Opens the window on this port at once: a device,",
        "tcp://host:port or demo:SCENARIO. Without a display",
        "the drive runs in the terminal."
      })
  private @Nullable String port;

  @Option(
      names = "--vehicle",
      paramLabel = "NAME",
      converter = PlainText.Name.class,
      description = "The vehicle for --port; else the one used last.")
  private @Nullable String vehicle;

  @Option(
      names = "--receiver",
      paramLabel = "PORT",
      description = {
        "A satellite receiver that speaks NMEA 0183, for the",
        "window's drives: a device or tcp://host:port."
      })
  private @Nullable String receiver;

  @Mixin private RouteOption route = new RouteOption();

  private SteadypullCommand(Program program) {
    this.program = program;
  }

  /**
   * Runs one command line.
   *
   * @param out takes results
   * @param err takes diagnostics
   * @return the exit status
   */
  public static int run(Program program, PrintWriter out, PrintWriter err, String... arguments) {
    CommandLine commandLine = new CommandLine(new SteadypullCommand(program));
    HelpLayout.apply(commandLine);
    return commandLine
        .setOut(out)
        .setErr(err)
        .setExpandAtFiles(false)
        .setParameterExceptionHandler(HelpLayout::explainMisuse)
        .setExecutionExceptionHandler(SteadypullCommand::explain)
        .execute(arguments);
  }

  private static int explain(
      Exception failure, CommandLine commandLine, CommandLine.ParseResult parsed) {
    if (failure instanceof WrongAddressException wrong) {
      return HelpLayout.refuse(commandLine, Explanation.of(wrong));
    }
    PrintWriter err = commandLine.getErr();
    err.println(Explanation.of(failure));
    err.flush();
    return commandLine.getCommandSpec().exitCodeOnExecutionException();
  }

  @Override
  public Integer call() throws Exception {
    return new WindowOrTerminal(this).open(Optional.ofNullable(port), Optional.ofNullable(vehicle));
  }

  Program program() {
    return program;
  }

  PrintWriter out() {
    return commandLine().getOut();
  }

  PrintWriter err() {
    return commandLine().getErr();
  }

  Path libraryFolder() {
    return LibraryPlace.of(Optional.ofNullable(library), program);
  }

  /** Opens the library for writing, and tells of trips that a crash had left behind. */
  TripLibrary openLibrary() throws LibraryException {
    TripLibrary opened = TripLibrary.open(libraryFolder());
    for (String tripId : opened.recovered()) {
      err()
          .printf(
              "The program or the tablet stopped while trip %s was recorded. It has its end now,"
                  + " with everything up to the last second that was written.%n",
              tripId);
    }
    err().flush();
    return opened;
  }

  /** Opens the library for reading: nothing in it changes, and none is made. */
  TripLibrary openLibraryToRead() throws LibraryException {
    return TripLibrary.openToRead(libraryFolder());
  }

  Locale locale() {
    return language;
  }

  QuantityFormat format() {
    return new QuantityFormat(locale(), units);
  }

  DriveWords words(RuleBook rules) {
    return new DriveWords(rules, locale(), units);
  }

  LiveDrives drives(TripLibrary open) {
    DriveWords words = words(RulesInForce.read(this, /* mayWrite= */ true));
    LiveDrives drives =
        new LiveDrives(open, program.offers(), words, program.wall(), program.version())
            .on(program.tablet());
    return receiver == null ? drives : drives.listeningTo(receiver);
  }

  /** The route that the window's drives follow, if one was given. */
  Optional<RouteLine> route() throws TableException, CommandFailure {
    return route.read(commandLine(), receiver != null, format(), err());
  }

  /** Refuses wrong addresses; asked before a library is opened, which would make one. */
  void requireAddresses(Optional<String> port, Optional<String> ownReceiver) throws DriveException {
    LiveDrives.requireAddresses(
        port, ownReceiver.or(() -> Optional.ofNullable(receiver)), program.offers());
  }

  CommandLine commandLine() {
    if (spec == null) {
      throw new IllegalStateException("Commands run through SteadypullCommand.run");
    }
    return spec.commandLine();
  }

  /** Tells the version that the program was given. */
  static final class Version implements CommandLine.IVersionProvider {
    @Spec private @Nullable CommandSpec spec;

    @Override
    public String[] getVersion() {
      Object command = spec == null ? null : spec.root().userObject();
      return command instanceof SteadypullCommand main
          ? new String[] {"steadypull " + main.program.version()}
          : new String[0];
    }
  }
}
