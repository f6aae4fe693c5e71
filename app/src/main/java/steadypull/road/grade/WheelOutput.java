package steadypull.road.grade;

import java.util.OptionalDouble;
import steadypull.channel.Channels;
import steadypull.road.EnginePower;
import steadypull.road.LatestSamples;
import steadypull.vehicle.Vehicle;

/** What of the engine's power reaches the wheels, and as which torque. Pipeline thread only. */
final class WheelOutput {
  private static final double FRESH_SECONDS = 5;

  /** Below this a power is no torque: division by almost nothing. */
  private static final double LOWEST_METRES_PER_SECOND = 1;

  private final GearInference gears;
  private final OptionalDouble tyreRadiusMetres;
  private final LatestSamples samples;

  /** Reads the samples of that vehicle. */
  WheelOutput(Vehicle vehicle, LatestSamples samples) {
    this.gears = new GearInference(vehicle.driveline(), vehicle.rig());
    this.tyreRadiusMetres = vehicle.rig().tyreRadiusMetres();
    this.samples = samples;
  }

  /** Power at the wheels, kW, by what driveline and converter take. */
  double kilowatts(EnginePower engine, double metresPerSecond, long timeMicros) {
    OptionalDouble engineRpm = samples.within(Channels.ENGINE_SPEED, timeMicros, FRESH_SECONDS);
    double slip =
        gears
            .tell(engineRpm.orElse(0), metresPerSecond)
            .map(GearInference.Engaged::slip)
            .orElse(0.0);
    return engine.kilowatts() * DerivedChannels.DRIVELINE_EFFICIENCY * (1 - slip);
  }

  /** Torque at the wheels, N.m; empty without a tyre's radius and at a standstill. */
  OptionalDouble newtonMetres(double wheelKilowatts, double metresPerSecond) {
    return tyreRadiusMetres.isEmpty() || metresPerSecond < LOWEST_METRES_PER_SECOND
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            wheelKilowatts * 1000 / metresPerSecond * tyreRadiusMetres.getAsDouble());
  }
}
