package steadypull.thermal;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One gear lower at the same speed and wheel power, where this drive has shown such a gear and the
 * engine does not turn too fast in it. Immutable but for what the drive has shown, which it reads.
 *
 * <p>Fuel and air are never less than in the gear that is kept, and boost is taken to stay: how far
 * it falls, this vehicle need not have shown.
 *
 * @param maps fuel and air that go with a power
 * @param gears gears that were seen
 * @param ratedRpm of the engine; if it is not known, the highest that was seen bounds it
 */
record GearLower(LoadMaps maps, GearsSeen gears, OptionalDouble ratedRpm) {

  /** A load in the next lower gear; empty if there is none for it. */
  Optional<Load> of(Load load) {
    OptionalDouble rpm =
        gears.oneLower(
            load.engineRpm(), load.metresPerSecond(), ratedRpm.orElse(gears.highestRpm()));
    return rpm.isPresent() ? Optional.of(turning(load, rpm.getAsDouble())) : Optional.empty();
  }

  private Load turning(Load load, double rpm) {
    Load moved = maps.moved(load, load.kilowatts(), rpm, load.metresPerSecond());
    double air = Math.max(load.airKilogramsPerSecond(), moved.airKilogramsPerSecond());
    double fuel = Math.max(load.fuelKilowatts(), moved.fuelKilowatts());
    double breathing = load.airKilogramsPerSecond() > 0 ? air / load.airKilogramsPerSecond() : 1;
    return moved
        .at(load.kilowatts(), fuel, air)
        .with(CoreChange.turning(rpm / load.engineRpm(), breathing));
  }
}
