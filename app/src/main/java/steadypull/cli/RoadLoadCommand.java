package steadypull.cli;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import steadypull.road.RoadLoad;
import steadypull.road.StandardAtmosphere;
import steadypull.road.load.GradeEquivalent;
import steadypull.road.load.WheelChain;
import steadypull.store.TripLibrary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;

/** The load of a grade, and the grade of a load. */
@Command(
    name = "road-load",
    mixinStandardHelpOptions = true,
    header = "Tells what a grade asks of a rig, or which grade a dynamometer's load is.",
    description =
        "Say --grade, or what the wheels give: --wheel-power or --wheel-torque, uncorrected. What"
            + " nobody entered is assumed, and told.")
final class RoadLoadCommand implements Callable<Integer> {
  private static final double KILOMETRES_PER_HOUR = 3.6;

  @ParentCommand private @Nullable SteadypullCommand parent;

  @Option(
      names = "--vehicle",
      paramLabel = "NAME",
      converter = PlainText.Name.class,
      description = "The vehicle whose rig and gears are meant.")
  private @Nullable String name;

  @Option(
      names = "--grade",
      paramLabel = "PERCENT",
      converter = BoundedNumber.Grade.class,
      description = "Grade of the road, negative downhill.")
  private @Nullable Double gradePercent;

  @Option(
      names = "--wheel-power",
      paramLabel = "KW",
      converter = BoundedNumber.Power.class,
      description = "Power of all driven wheels together.")
  private @Nullable Double wheelKilowatts;

  @Option(
      names = "--wheel-torque",
      paramLabel = "N.M",
      converter = BoundedNumber.Torque.class,
      description = "Torque of all driven wheels together.")
  private @Nullable Double wheelNewtonMetres;

  @Option(
      names = "--speed",
      paramLabel = "KM_H",
      required = true,
      converter = BoundedNumber.Speed.class,
      description = "Steady speed of the road or of the rollers.")
  private double kilometresPerHour;

  @Option(
      names = "--mass",
      paramLabel = "KG",
      converter = MassOption.Both.class,
      description = "Vehicle and trailer together; else as entered.")
  private @Nullable Double kilograms;

  @Option(
      names = "--ambient",
      paramLabel = "DEGC",
      converter = BoundedNumber.Ambient.class,
      description = "Outside air; default 20.")
  private double celsius = 20;

  @Option(
      names = "--altitude",
      paramLabel = "M",
      converter = BoundedNumber.Altitude.class,
      description = "Of the road above the sea; default 0.")
  private double altitudeMetres;

  @Option(names = "--four-wheel-drive", description = "Counts the losses of four driven wheels.")
  private boolean fourDriven;

  @Option(names = "--json", description = "Prints an object for machines.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    requireOneLoad(main);
    Vehicle vehicle = vehicle(main);
    RoadLoadAnswer answer =
        new RoadLoadAnswer(
            vehicle.rig(),
            vehicle.driveline(),
            celsius,
            altitudeMetres,
            fourDriven ? WheelChain.FOUR_DRIVEN : WheelChain.TWO_DRIVEN,
            fourDriven,
            equivalent(vehicle.rig()));
    main.out()
        .print(json ? RoadLoadJson.of(answer) + "\n" : RoadLoadText.of(answer, main.format()));
    main.out().flush();
    return 0;
  }

  private void requireOneLoad(SteadypullCommand main) {
    long said =
        Stream.of(
                Optional.ofNullable(gradePercent),
                Optional.ofNullable(wheelKilowatts),
                Optional.ofNullable(wheelNewtonMetres))
            .filter(Optional::isPresent)
            .count();
    if (said != 1) {
      throw Misuse.of(
          main,
          "road-load",
          "one of --grade, --wheel-power and --wheel-torque",
          said == 0 ? "none" : "several",
          said == 0 ? "Say one" : "Leave all but one away");
    }
    if (name == null && kilograms == null) {
      throw Misuse.of(
          main,
          "road-load",
          "--vehicle or --mass",
          "neither, so that nobody knows what is being moved",
          "Say one");
    }
  }

  private Vehicle vehicle(SteadypullCommand main) throws Exception {
    Vehicle known =
        name == null ? Vehicle.unknown("this rig", CoolingLayout.AIR_TO_AIR) : find(main, name);
    if (kilograms != null) {
      return known.withRig(
          known.rig().withMasses(OptionalDouble.of(kilograms), OptionalDouble.empty()));
    }
    if (known.rig().massKilograms().isEmpty()) {
      throw new CommandFailure(
          "Could not compute the road load of \"%s\": expected a mass, found that nobody has entered one. Say --mass KG here, or enter it with \"steadypull vehicle\"."
              .formatted(known.name()));
    }
    return known;
  }

  private static Vehicle find(SteadypullCommand main, String name) throws Exception {
    try (TripLibrary library = main.openLibraryToRead()) {
      Optional<Vehicle> found = library.vehicle(name);
      if (found.isEmpty()) {
        throw new CommandFailure(
            "Could not compute the road load of \"%s\": expected a vehicle of the library, found %s. Say one of these, or --mass alone."
                .formatted(name, KnownVehicles.of(library.vehicleNames())));
      }
      return found.get();
    }
  }

  private GradeEquivalent equivalent(Rig rig) throws CommandFailure {
    RoadLoad load = RoadLoad.of(rig, density()).orElseThrow();
    double speed = kilometresPerHour / KILOMETRES_PER_HOUR;
    if (gradePercent != null) {
      return new GradeEquivalent(load, speed, gradePercent / 100);
    }
    double kilowatts = kilowatts(rig, speed);
    return GradeEquivalent.ofWheelPower(load, speed, kilowatts)
        .orElseThrow(
            () ->
                new CommandFailure(
                    "Could not find the grade of %.0f kW at %.0f km/h: expected a load that a road can ask of %.0f kg, found more than its weight. Check power, speed and mass."
                        .formatted(kilowatts, kilometresPerHour, load.massKilograms())));
  }

  private double kilowatts(Rig rig, double metresPerSecond) throws CommandFailure {
    if (wheelKilowatts != null) {
      return wheelKilowatts;
    }
    double radius =
        rig.tyreRadiusMetres()
            .orElseThrow(
                () ->
                    new CommandFailure(
                        "Could not turn a wheel torque into a force: expected a tyre radius, found"
                            + " none. Say \"steadypull vehicle NAME --tyre SIZE\" first, or"
                            + " --wheel-power here."));
    return Objects.requireNonNull(wheelNewtonMetres) / radius * metresPerSecond / 1000;
  }

  private double density() {
    double geopotential = StandardAtmosphere.geopotentialMetres(altitudeMetres);
    return StandardAtmosphere.density(StandardAtmosphere.kilopascals(geopotential), celsius);
  }
}
