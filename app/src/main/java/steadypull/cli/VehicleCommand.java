package steadypull.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import steadypull.drive.AdviceRecord;
import steadypull.drive.VehicleSensors;
import steadypull.exchange.VehicleFile;
import steadypull.review.LearntLimit;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.LessonOfTrip;
import steadypull.vehicle.Limit;
import steadypull.vehicle.PressureCap;
import steadypull.vehicle.Rig;
import steadypull.vehicle.SpeedRange;
import steadypull.vehicle.TyreSize;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.role.RoleWords;

/** Shows or sets a vehicle. */
@Command(
    name = "vehicle",
    mixinStandardHelpOptions = true,
    header = "Shows or sets a vehicle and its limits.",
    description =
        "A limit that nobody has confirmed is a cautious default: replace it with the maker's or"
            + " workshop's figure.")
final class VehicleCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Parameters(
      paramLabel = "NAME",
      converter = PlainText.Name.class,
      description = "Name of the vehicle; a new name makes a new one.")
  private String name = "";

  @Option(
      names = "--limit",
      paramLabel = "id=value[:source]",
      converter = LimitOption.class,
      description =
          "A thermal limit in degC and where it comes from: maker, workshop, or your own words.")
  private List<Limit> limits = new ArrayList<>();

  @Option(
      names = "--layout",
      paramLabel = "LAYOUT",
      converter = WordOption.Layout.class,
      description = "How the charge air is cooled: air-to-air or water-to-air.")
  private @Nullable CoolingLayout layout;

  @Option(
      names = "--rig",
      paramLabel = "RIG.json",
      description = {
        "mass_kg, trailer_mass_kg, drag_area_m2,",
        "rolling_resistance, tyre_radius_m; each optional."
      })
  private @Nullable Path rig;

  @Mixin private MassOptions masses = new MassOptions();

  @Option(
      names = "--tyre",
      paramLabel = "SIZE",
      converter = TyreOption.class,
      description = {
        "Size of the driven wheels' tyres such as 275/70R18;",
        "sets tyre_radius_m to the radius they roll at."
      })
  private @Nullable TyreSize tyre;

  @Option(
      names = "--cap",
      paramLabel = "BAR[:source]",
      converter = CapOption.class,
      description = {
        "What the cap of the cooling system holds, 0 to 3 bar;",
        "1.1 unless told. Engine coolant counts as limited by",
        "the lower of its limit and 8 degC under boiling."
      })
  private @Nullable PressureCap cap;

  @Option(
      names = "--speed-range",
      paramLabel = "A..B",
      converter = SpeedRangeOption.class,
      description = "Speeds in km/h that advice may name; default 60..90.")
  private @Nullable SpeedRange speeds;

  @Option(
      names = "--export",
      paramLabel = "FILE",
      converter = PlainText.Place.class,
      description = "Writes it to a file.")
  private @Nullable Path exportTo;

  @Option(
      names = "--import",
      paramLabel = "FILE",
      description = "Takes the vehicle from such a file, under this name.")
  private @Nullable Path importFrom;

  @Option(
      names = "--role",
      paramLabel = "CHANNEL=SIGNAL",
      converter = RoleOption.class,
      description = {
        "Which sensor feeds a channel, such as",
        "charge_air_temp_out=01.77.1; =usual goes back."
      })
  private List<RoleOption.Role> roles = new ArrayList<>();

  @Option(
      names = "--propose-roles",
      description = "Tells where its sensors seem to sit by what its drives have shown, and why.")
  private boolean proposesRoles;

  @Option(names = "--confirm-roles", description = "Confirms all that --propose-roles tells.")
  private boolean confirmsRoles;

  @Option(
      names = "--propose-limits",
      description = {
        "Tells where its control unit has really begun to take",
        "torque away, on how many derates, and which limit follows."
      })
  private boolean proposesLimits;

  @Option(
      names = "--confirm-limit",
      paramLabel = "CHANNEL",
      description = "Confirms what --propose-limits tells of a channel.")
  private List<String> confirmedLimits = new ArrayList<>();

  @Option(
      names = "--json",
      description = {
        "Prints an object for machines: limits and where they",
        "come from, layout, configurations with what was learnt,",
        "trends, and the limits that derates propose."
      })
  private boolean json;

  @Mixin private LearntOptions learnt = new LearntOptions();

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    learnt.refuseContradictions(main);
    refuseOtherLists(main);
    try (TripLibrary library = main.openLibrary()) {
      Vehicle vehicle = limited(confirmed(changed(base(library)), library), library);
      if (isChange()) {
        library.save(vehicle);
      }
      if (importFrom != null && !vehicle.configurations().isEmpty()) {
        library.heat().keep(name, vehicle.configurations());
      }
      Optional<String> done =
          learnt.apply(vehicle, library.heat(), main.program().wall().instant());
      if (exportTo != null) {
        VehicleFile.write(exportTo, library.vehicle(name).orElse(vehicle));
      }
      main.out().print(done.isPresent() ? done.get() + "\n" : shown(vehicle, library));
      main.out().flush();
    }
    return 0;
  }

  private void refuseOtherLists(SteadypullCommand main) {
    if (json && (proposesRoles || proposesLimits || learnt.saySomething())) {
      throw Misuse.of(
          main,
          "vehicle",
          "--json without --propose-roles, --propose-limits, --fitted and --forget-learnt",
          "one of them beside it",
          "Do one after the other; --json has the limits that are proposed");
    }
  }

  private String shown(Vehicle vehicle, TripLibrary library) throws LibraryException {
    if (json) {
      return ShownVehicleJson.of(vehicle, library.heat().lessons(name)) + "\n";
    }
    if (proposesRoles) {
      return proposals(vehicle, library);
    }
    if (proposesLimits) {
      return LearntLimitText.of(LearntLimit.of(vehicle, library.heat().lessons(name)));
    }
    StringBuilder text = new StringBuilder(VehicleText.of(vehicle));
    text.append(HeatTrendText.of(vehicle, library.heat().lessons(name)));
    String advice = AdviceRecordText.of(AdviceRecord.ofVehicle(library, name));
    text.append(advice.isEmpty() ? "" : "advice on its trips: " + advice + "\n");
    return text.toString();
  }

  private String proposals(Vehicle vehicle, TripLibrary library) throws LibraryException {
    SteadypullCommand main = Parents.require(parent);
    return RoleText.of(
        VehicleSensors.of(vehicle, library), new RoleWords(main.locale(), main.format()));
  }

  private Vehicle limited(Vehicle vehicle, TripLibrary library) throws Exception {
    Vehicle changed = vehicle;
    List<LessonOfTrip> lessons =
        confirmedLimits.isEmpty() ? List.of() : library.heat().lessons(name);
    for (String channel : confirmedLimits) {
      changed = changed.withLimit(LearntLimitText.confirmed(channel, changed, lessons));
    }
    return changed;
  }

  private Vehicle confirmed(Vehicle vehicle, TripLibrary library) throws Exception {
    if (!confirmsRoles) {
      return vehicle;
    }
    VehicleSensors sensors = VehicleSensors.of(vehicle, library);
    if (sensors.survey().proposals().isEmpty()) {
      throw new CommandFailure(
          "Could not confirm sensor roles of \"%s\": its drives have not shown where a sensor sits. --propose-roles says what is missing."
              .formatted(name));
    }
    return sensors.confirming(sensors.unconfirmed()).vehicle();
  }

  private boolean isChange() {
    return !limits.isEmpty()
        || !roles.isEmpty()
        || confirmsRoles
        || !confirmedLimits.isEmpty()
        || layout != null
        || rig != null
        || masses.saySomething()
        || tyre != null
        || cap != null
        || speeds != null
        || importFrom != null;
  }

  private Vehicle base(TripLibrary library) throws Exception {
    if (importFrom != null) {
      return VehicleFile.read(importFrom).withName(name);
    }
    Optional<Vehicle> known = library.vehicle(name);
    if (known.isPresent()) {
      return known.get();
    }
    if (!isChange()) {
      throw new CommandFailure(
          "Could not show the vehicle \"%s\": the library knows %s. Set a limit or a layout to make a new one."
              .formatted(name, KnownVehicles.of(library.vehicleNames())));
    }
    return Vehicle.unknown(name, layout == null ? CoolingLayout.AIR_TO_AIR : layout);
  }

  private Vehicle changed(Vehicle vehicle) throws Exception {
    Vehicle changed = layout == null ? vehicle : vehicle.withLayout(layout);
    for (Limit limit : limits) {
      changed = changed.withLimit(limit);
    }
    for (RoleOption.Role role : roles) {
      changed = role.applyTo(changed);
    }
    Rig towed = rig == null ? changed.rig() : VehicleFile.readRig(rig);
    changed = shod(changed.withRig(masses.applyTo(towed)));
    changed = cap == null ? changed : changed.withCap(cap);
    return speeds == null ? changed : changed.withSpeeds(speeds);
  }

  /** Another rig file does not take the tyres off; its own radius goes before their size. */
  private Vehicle shod(Vehicle vehicle) {
    if (tyre != null) {
      return vehicle
          .withDriveline(vehicle.driveline().withTyreSize(Optional.of(tyre)))
          .withRig(vehicle.rig().withTyreRadius(radius(tyre)));
    }
    Optional<TyreSize> size = vehicle.driveline().tyreSize();
    return size.isPresent() && vehicle.rig().tyreRadiusMetres().isEmpty()
        ? vehicle.withRig(vehicle.rig().withTyreRadius(radius(size.get())))
        : vehicle;
  }

  private static OptionalDouble radius(TyreSize size) {
    return OptionalDouble.of(Math.round(size.rollingRadiusMetres() * 1e4) / 1e4);
  }
}
