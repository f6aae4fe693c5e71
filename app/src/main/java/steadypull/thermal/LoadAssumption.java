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
   * Speed comes in whole km/h, so that a gain of one, and of half a one while the pull wavers, may
   * be no acceleration at all, m/s.
   */
  private static final double NO_ACCELERATION = 1.5 / KILOMETRES_PER_HOUR;

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
   * Unchanged where the rig's mass or the grade cannot be told, and where the speed has not moved
   * by more than the step in which it comes: taken for an acceleration, every step up would take
   * load away, and no step down gives any.
   */
  Load steady(Load held) {
    if (road.isEmpty() || grade.isEmpty()) {
      return held;
    }
    double atWheels = road.get().kilowatts(held.metresPerSecond(), grade.getAsDouble());
    double steady = Math.max(0, atWheels / DerivedChannels.DRIVELINE_EFFICIENCY);
    return held.kilowatts() - steady <= kilowattsOfSteps(road.get(), held.metresPerSecond())
        ? held
        : maps.moved(held, steady, held.engineRpm(), held.metresPerSecond());
  }

  /** What it takes at the crankshaft to gain so little speed while the grade is found. */
  private static double kilowattsOfSteps(RoadLoad road, double metresPerSecond) {
    double newtons =
        road.inertialKilograms() * NO_ACCELERATION / DerivedChannels.LOAD_GRADE_SECONDS;
    return newtons * metresPerSecond / 1000 / DerivedChannels.DRIVELINE_EFFICIENCY;
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
