package steadypull.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadypull.store.AddedTrip;
import steadypull.store.LinkIdentity;
import steadypull.store.NewTrip;
import steadypull.store.TripAdder;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleFileException;
import steadypull.vehicle.VehicleJson;

/** Takes the demo season into a library; what is there already is not taken again. */
final class SeasonImport implements Taking {
  private static final String NAME = "demo:season";
  private static final Pattern ADDRESS = Pattern.compile("demo:season(?:\\?seed=(\\d{1,9}))?");

  private final Program program;
  private final String address;
  private final long seed;

  private SeasonImport(Program program, String address, long seed) {
    this.program = program;
    this.address = address;
    this.seed = seed;
  }

  /** True if that is no file but the demo season, however it is written. */
  static boolean isMeant(String fileOrAddress) {
    return fileOrAddress.startsWith("demo:");
  }

  /**
   * The import of an address.
   *
   * @param address {@code demo:season}, with {@code ?seed=NUMBER} for another one
   */
  static SeasonImport of(Program program, String address) throws CommandFailure {
    Matcher matcher = ADDRESS.matcher(address);
    if (!matcher.matches()) {
      throw new CommandFailure(
          "Could not import \"%s\": expected demo:season or demo:season?seed=1, found another name. The scenarios are drives: give them to record --port."
              .formatted(address));
    }
    String seed = matcher.group(1);
    return new SeasonImport(program, address, seed == null ? 1 : Long.parseLong(seed));
  }

  @Override
  public Kind kind() {
    return Kind.SEASON;
  }

  /** Takes all trips; returns their ids, oldest first. */
  @Override
  public List<String> into(TripAdder library) throws VehicleFileException {
    List<String> ids = new ArrayList<>();
    for (DemoDesk.SeasonTrip trip : program.demo().season(seed)) {
      String origin = NAME + "/" + seed + "/" + ids.size();
      Optional<String> known = library.findOrigin(origin);
      ids.add(known.isPresent() ? known.get() : take(library, trip, origin));
    }
    return ids;
  }

  private String take(TripAdder adder, DemoDesk.SeasonTrip trip, String origin)
      throws VehicleFileException {
    Vehicle vehicle = VehicleJson.read(trip.vehicleFile(), address);
    adder.saveIfNew(vehicle);
    NewTrip added =
        new NewTrip(
            vehicle.withRig(VehicleJson.readRig(trip.rigFile(), address)),
            trip.start().toInstant(),
            Optional.of(trip.start().getOffset()),
            trip.details(),
            address,
            program.version());
    AddedTrip entries = adder.begin(added, origin);
    entries.describe(new LinkIdentity("demo adapter", trip.protocol(), ""));
    return entries.seal(trip.drive(entries::append));
  }
}
