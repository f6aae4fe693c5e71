package steadypull.road.grade;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channels;
import steadypull.road.EnginePower;
import steadypull.road.LatestSamples;
import steadypull.road.PositionFix;
import steadypull.road.RoadLoad;
import steadypull.road.StandardAtmosphere;
import steadypull.vehicle.Rig;

/** Reads from a vehicle's samples what each second tells of the road. Pipeline thread only. */
final class RoadReading {
  /** Under this engine power the brakes may be on or the engine may brake. */
  private static final double LEAST_PULL_KILOWATTS = 8;

  private static final double LOWEST_PULLING_METRES_PER_SECOND = 3;

  /** Outside air and its pressure change slowly. */
  private static final double WEATHER_FRESH_SECONDS = 600;

  private static final double USUAL_AIR_CELSIUS = 20;
  private static final double MICROS_PER_SECOND = 1e6;

  private final Rig rig;
  private final LatestSamples samples;
  private final CourseWatch course = new CourseWatch();

  /** Reads the samples of a vehicle that moves that rig. */
  RoadReading(Rig rig, LatestSamples samples) {
    this.rig = rig;
    this.samples = samples;
  }

  /** The road load of the rig in the present air, or empty if its mass is unknown. */
  Optional<RoadLoad> load(long timeMicros) {
    double kilopascals =
        samples
            .within(Channels.BAROMETRIC_PRESSURE, timeMicros, WEATHER_FRESH_SECONDS)
            .orElse(StandardAtmosphere.SEA_LEVEL_KILOPASCALS);
    double celsius =
        samples
            .within(Channels.AMBIENT_AIR_TEMP, timeMicros, WEATHER_FRESH_SECONDS)
            .orElse(USUAL_AIR_CELSIUS);
    return RoadLoad.of(rig, StandardAtmosphere.density(kilopascals, celsius));
  }

  /**
   * What a second tells; once for each, in their order.
   *
   * @param wheelKilowatts at the wheels, 0 or more; empty if that is not known
   */
  RoadSecond second(long timeMicros, double metresPerSecond, OptionalDouble wheelKilowatts) {
    return new RoadSecond(
        timeMicros / MICROS_PER_SECOND,
        metresPerSecond,
        metresPerSecond >= LOWEST_PULLING_METRES_PER_SECOND
            ? traction(timeMicros, metresPerSecond, wheelKilowatts)
            : Optional.empty(),
        samples.inSecondBefore(Channels.ALTITUDE, timeMicros),
        turn(timeMicros));
  }

  private Optional<Turn> turn(long timeMicros) {
    return PositionFix.ofSecondBefore(samples, timeMicros)
        .flatMap(
            fix -> course.turned(fix.seconds(), fix.latitudeDegrees(), fix.longitudeDegrees()));
  }

  private Optional<Traction> traction(
      long timeMicros, double metresPerSecond, OptionalDouble wheelKilowatts) {
    OptionalDouble net = EnginePower.netKilowatts(samples, timeMicros);
    if (net.isEmpty() || wheelKilowatts.isEmpty()) {
      return Optional.empty();
    }
    boolean isPulling = net.getAsDouble() >= LEAST_PULL_KILOWATTS;
    double kilowatts = isPulling ? wheelKilowatts.getAsDouble() : net.getAsDouble();
    return load(timeMicros)
        .map(load -> new Traction(kilowatts * 1000 / metresPerSecond, isPulling, load));
  }
}
