package steadypull.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.NearMatch;
import steadypull.cli.TableOpening.Opened;
import steadypull.exchange.IncomingTable;
import steadypull.exchange.MappingText;
import steadypull.exchange.TableException;
import steadypull.exchange.TransferWatch;
import steadypull.exchange.TripTable;
import steadypull.store.AddedTrip;
import steadypull.store.LibraryException;
import steadypull.store.NewTrip;
import steadypull.store.TripAdder;
import steadypull.store.TripDetails;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;

/** Trip tables on their way into the library. One thread. */
final class TableImport {
  private static final String ORIGIN = "table/";

  /**
   * What is said of all tables.
   *
   * @param details what is said of their trips
   * @param mapping how to read them, if somebody said
   * @param zone where their clock was, if somebody said
   * @param start when the trips started, if somebody said
   * @param mayRepeat whether a table that was imported before becomes one more trip
   */
  record Wishes(
      String vehicleName,
      Optional<Rig> rig,
      TripDetails details,
      Optional<MappingText> mapping,
      Optional<ZoneId> zone,
      Optional<OffsetDateTime> start,
      boolean mayRepeat) {}

  private final SteadypullCommand main;
  private final TripLibrary library;
  private final Wishes wishes;
  private final PrintWriter notes;
  private final TransferProgress progress;
  private final TableOpening opening;
  private final List<Opened> opened = new ArrayList<>();
  private Optional<Vehicle> vehicle = Optional.empty();

  TableImport(SteadypullCommand main, TripLibrary library, Wishes wishes) {
    this.main = main;
    this.library = library;
    this.wishes = wishes;
    this.opening = new TableOpening(wishes.mapping(), wishes.zone(), library::mapping);
    this.notes = main.err();
    this.progress = new TransferProgress(main.err());
  }

  /** Opens a table; all that are opened here are drives of one vehicle. */
  Taking open(Path file) throws TableException, LibraryException {
    Opened table = opening.open(file);
    table.words().ifPresent(words -> note(table, words));
    boolean isFirst = opened.isEmpty();
    opened.add(table);
    Vehicle driven = isFirst ? vehicle(table.table()) : vehicle.orElseThrow();
    vehicle = Optional.of(driven);
    return Taking.of(
        Taking.Kind.TABLE,
        adder -> {
          if (isFirst) {
            adder.save(driven);
          }
          return List.of(add(adder, table, wishes.rig().map(driven::withRig).orElse(driven)));
        });
  }

  /** Ends what is being read; it is refused then. Any thread. */
  void stop() {
    progress.stop();
  }

  /** Leaves the line of progress. */
  void finish() {
    progress.finish();
  }

  private String add(TripAdder adder, Opened opened, Vehicle vehicle)
      throws TableException, CommandFailure {
    String origin = origin(adder, opened);
    TripStart start = TripStart.of(wishes.start(), opened.table().start(), now());
    AddedTrip trip =
        adder.begin(
            new NewTrip(
                adder.settingOut(vehicle, start.moment()),
                start.moment(),
                start.offset(),
                wishes.details(),
                opened.name(),
                main.program().version()),
            origin);
    long endMicros =
        opened
            .table()
            .<RuntimeException>read(
                trip::append, progress.watch("Reading " + opened.name(), opened.table().bytes()));
    progress.finish();
    start.words().ifPresent(words -> note(opened, words));
    opened.table().channels().stream()
        .map(TableImport::nearWords)
        .flatMap(Optional::stream)
        .forEach(each -> note(opened, each));
    opened.table().conversions().forEach(each -> note(opened, "Converted " + each + "."));
    opened.table().heldWords().forEach(each -> note(opened, each + "."));
    opened.table().clockWords().forEach(each -> note(opened, each));
    if (wishes.zone().isPresent() && !opened.table().isLocal()) {
      note(opened, "--zone did nothing: its times need no zone.");
    }
    return trip.seal(endMicros);
  }

  /** The trip that a table was taken in as, if it was. */
  static Optional<TripSummary> known(Path table, TripLibrary library)
      throws TableException, LibraryException {
    return library.findOrigin(ORIGIN + TripTable.digest(table, TransferWatch.NONE));
  }

  /**
   * The own id of a table's trip: its content's, so that the same table is known again; another one
   * if it is to be taken once more.
   */
  private String origin(TripAdder adder, Opened opened) throws TableException, CommandFailure {
    String origin =
        ORIGIN
            + TripTable.digest(
                opened.file(),
                progress.watch("Looking through " + opened.name(), opened.table().bytes()));
    Optional<String> before = adder.findOrigin(origin);
    if (before.isPresent() && !wishes.mayRepeat()) {
      throw new CommandFailure(
          "Could not import %s: expected a table that is new here, found one that was imported before as trip %s. Nothing was imported; --again takes it as one more trip."
              .formatted(opened.name(), before.get()));
    }
    return adder.isFreeOrigin(origin) ? origin : UUID.randomUUID().toString();
  }

  /** A channel that is nearly one of ours is kept, and asked about. */
  private static Optional<String> nearWords(Channel channel) {
    List<String> known = Channels.all().stream().map(Channel::id).toList();
    String question = NearMatch.question(channel.id(), known);
    return known.contains(channel.id()) || question.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Kept "
                + channel.header()
                + " as a channel of its own."
                + question
                + " Rename the header for that.");
  }

  /** Keeps somebody's mapping for tables of the same kinds, after they were taken. */
  void keepMapping() throws LibraryException {
    if (wishes.mapping().isPresent() && !opened.isEmpty()) {
      for (Opened each : opened) {
        library.keepMapping(each.headerLine(), wishes.mapping().get().toml());
      }
      notes.println(
          "The mapping is kept: tables with the same header line are read by it from now on.");
    }
  }

  private Vehicle vehicle(IncomingTable first) throws LibraryException, TableException {
    Optional<Vehicle> known = library.vehicle(wishes.vehicleName());
    return known.isPresent() ? known.get() : TableVehicle.of(wishes.vehicleName(), first);
  }

  private Instant now() {
    return main.program().wall().instant();
  }

  private void note(Opened opened, String words) {
    notes.println(opened.name() + ": " + words);
  }
}
