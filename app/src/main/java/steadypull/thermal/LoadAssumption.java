package steadypull.thermal;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.road.RoadLoad;
import steadypull.road.grade.DerivedChannels;

/** Turns what is assumed about the drive into the load that the stores will see. Immutable. */
record LoadAssumption(LoadMaps maps, Optional<RoadLoad> road, OptionalDouble grade) {
  private static final double KILOMETRES_PER_HOUR = 3.6;

  /** Below this a driver shifts down rather than let the engine labour (common practice). */
  private static final double LOWEST_PULLING_RPM = 1200;

  private static final double STANDING_METRES_PER_SECOND = 3;

  /** Alternator, fan and pumps at idle (common practice, no source). */
  private static final double IDLE_KILOWATTS = 5;

  private static final double IDLE_RPM = 750;

  /**
   * The load once the assumption has come true, as far as power and road speed go; gear and air
   * conditioning are changed after that, draw by draw.
   */
  Load load(Load held, Forecast.Assumption assumption) {
    return switch (assumption) {
      case Forecast.Assumption.LoadHeld(),
          Forecast.Assumption.RoadKnown(),
          Forecast.Assumption.OneGearLower(),
          Forecast.Assumption.AirConditioningOff() ->
          held;
      case Forecast.Assumption.SpeedEased(double kilometresPerHour) ->
          eased(held, kilometresPerHour / KILOMETRES_PER_HOUR);
      case Forecast.Assumption.StoppedAtIdle() -> maps.moved(held, IDLE_KILOWATTS, IDLE_RPM, 0);
    };
  }

  /**
   * The load that goes on: without what only speeds the rig up, which ends when it has its speed.
   * Unchanged where the rig's mass or the grade cannot be told.
   */
  Load steady(Load held) {
    if (road.isEmpty() || grade.isEmpty()) {
      return held;
    }
    double atWheels = road.get().kilowatts(held.metresPerSecond(), grade.getAsDouble());
    double steady = Math.max(0, atWheels / DerivedChannels.DRIVELINE_EFFICIENCY);
    return steady >= held.kilowatts()
        ? held
        : maps.moved(held, steady, held.engineRpm(), held.metresPerSecond());
  }

  private Load eased(Load held, double metresPerSecond) {
    double now = held.metresPerSecond();
    if (now < STANDING_METRES_PER_SECOND) {
      return held;
    }
    double sameGear = held.engineRpm() * metresPerSecond / now;
    double rpm = sameGear < LOWEST_PULLING_RPM ? held.engineRpm() : sameGear;
    return maps.moved(held, kilowatts(held, metresPerSecond), rpm, metresPerSecond);
  }

  private double kilowatts(Load held, double metresPerSecond) {
    double now = held.metresPerSecond();
    if (road.isEmpty() || grade.isEmpty()) {
      // Rolling and grade outweigh drag in a climb: power goes with speed, and drag helps further.
      return held.kilowatts() * metresPerSecond / now;
    }
    double slope = grade.getAsDouble();
    double change = road.get().kilowatts(metresPerSecond, slope) - road.get().kilowatts(now, slope);
    return Math.max(0, held.kilowatts() + change / DerivedChannels.DRIVELINE_EFFICIENCY);
  }
}
