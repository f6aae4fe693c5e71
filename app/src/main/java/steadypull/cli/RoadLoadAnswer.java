package steadypull.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import steadypull.road.load.GradeEquivalent;
import steadypull.road.load.WheelChain;
import steadypull.vehicle.Driveline;
import steadypull.vehicle.Rig;

/**
 * What is told of a load on the road. Immutable.
 *
 * @param rig as it was entered
 * @param driveline as it was entered
 * @param celsius outside air
 * @param altitudeMetres of the road
 * @param efficiency that is counted with, crankshaft to wheels
 * @param isFourDriven whether all four wheels pull
 * @param equivalent the load and its road
 */
record RoadLoadAnswer(
    Rig rig,
    Driveline driveline,
    double celsius,
    double altitudeMetres,
    double efficiency,
    boolean isFourDriven,
    GradeEquivalent equivalent) {
  private static final double KILOMETRES_PER_HOUR = 3.6;

  /** Speeds for which the grade of the same power is told, km/h. */
  private static final List<Integer> OTHER_SPEEDS = List.of(40, 50, 60, 70, 80, 90, 100, 110);

  /** What people who use a dynamometer must not forget. */
  static final List<String> CAUTIONS =
      List.of(
          "A figure that a dynamometer has corrected, or has added the driveline's losses to, is"
              + " not what its wheels give.",
          "A workshop's fan gives less air than the road at the same speed: temperatures rise"
              + " sooner.",
          "Strap the vehicle down, keep people away from rollers and wheels, and follow the makers'"
              + " rules of dynamometer and vehicle.");

  /** A gear in which the load can be pulled. */
  record Gear(int number, WheelChain.Engine engine) {}

  double kilometresPerHour() {
    return equivalent.metresPerSecond() * KILOMETRES_PER_HOUR;
  }

  /** Torque of all driven wheels together, N.m; empty if the tyre is unknown. */
  OptionalDouble wheelNewtonMetres() {
    return rig.tyreRadiusMetres().isPresent()
        ? OptionalDouble.of(equivalent.newtons() * rig.tyreRadiusMetres().getAsDouble())
        : OptionalDouble.empty();
  }

  /** Power at the crankshaft; empty if the rig must be braked. */
  OptionalDouble engineKilowatts() {
    return equivalent.kilowatts() > 0
        ? OptionalDouble.of(equivalent.kilowatts() / efficiency)
        : OptionalDouble.empty();
  }

  /** Gears in which the engine turns no faster than its rated speed, if that is known. */
  List<Gear> gears() {
    Optional<WheelChain> chain = chain();
    if (chain.isEmpty() || equivalent.kilowatts() <= 0) {
      return List.of();
    }
    double fastest = driveline.ratedEngineSpeed().orElse(Double.POSITIVE_INFINITY);
    return IntStream.range(0, driveline.gearRatios().size())
        .mapToObj(
            index ->
                new Gear(
                    index + 1,
                    chain
                        .get()
                        .engine(
                            equivalent.newtons(),
                            equivalent.metresPerSecond(),
                            driveline.gearRatios().get(index))))
        .filter(gear -> gear.engine().rpm() <= fastest)
        .toList();
  }

  /** Roads that take the same power at other speeds; empty if the rig must be braked. */
  List<GradeEquivalent> samePower() {
    if (equivalent.kilowatts() <= 0) {
      return List.of();
    }
    return OTHER_SPEEDS.stream()
        .flatMap(speed -> equivalent.at(speed / KILOMETRES_PER_HOUR).stream())
        .toList();
  }

  /** Figures that nobody entered. */
  List<String> assumed() {
    List<String> assumed = new ArrayList<>();
    if (rig.dragAreaSquareMetres().isEmpty()) {
      assumed.add(
          String.format(
              Locale.ROOT, "drag area %.1f m2", equivalent.load().dragAreaSquareMetres()));
    }
    if (rig.rollingResistance().isEmpty()) {
      assumed.add(
          String.format(
              Locale.ROOT, "rolling resistance %.3f", equivalent.load().rollingResistance()));
    }
    assumed.add(
        String.format(
            Locale.ROOT,
            "%.0f %% of the engine's power at %s driven wheels",
            efficiency * 100,
            isFourDriven ? "four" : "two"));
    assumed.add("converter locked");
    assumed.add("no wind");
    return List.copyOf(assumed);
  }

  private Optional<WheelChain> chain() {
    return driveline.axleRatio().isPresent() && rig.tyreRadiusMetres().isPresent()
        ? Optional.of(
            new WheelChain(
                driveline.axleRatio().getAsDouble(),
                rig.tyreRadiusMetres().getAsDouble(),
                efficiency))
        : Optional.empty();
  }
}
