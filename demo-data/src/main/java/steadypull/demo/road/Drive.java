package steadypull.demo.road;

import java.time.Duration;
import java.util.Optional;
import java.util.Random;
import steadypull.demo.plant.Duty;
import steadypull.demo.plant.Plant;
import steadypull.demo.plant.PlantState;
import steadypull.demo.plant.Sensor;
import steadypull.demo.plant.Surroundings;

/**
 * A scenario under way. Time only moves when told to; the same seed gives the same drive. Used by
 * one thread at a time.
 */
public final class Drive {
  private static final double GUST_SECONDS = 8;

  /** As fast as any rig is driven, in m/s. */
  public static final double AS_FAST_AS_WISHED = 50;

  private final Scenario scenario;
  private final Plant plant;
  private final Random gusts;
  private long steps;
  private double gust;
  private double ceiling = AS_FAST_AS_WISHED;

  /**
   * Puts the vehicle at the start.
   *
   * @param seed of gusts and of the sensors' noise
   */
  public Drive(Scenario scenario, long seed) {
    this.scenario = scenario;
    gusts = new Random(seed ^ 0x5eedL);
    plant = new Plant(scenario.rig(), scenario.course().start(), around(0), seed);
  }

  /**
   * Drives on to a time, in s since the start. Past the scenario's end, or into the past, nothing
   * moves.
   */
  public void advanceTo(double seconds) {
    double until = Math.min(seconds, lasts());
    while ((steps + 1) * Plant.STEP_SECONDS <= until + 1e-9) {
      blow();
      double metres = plant.distance();
      plant.step(around(metres), duty(metres));
      steps++;
    }
  }

  /**
   * From now on the driver goes no faster, whatever the scenario wishes: somebody heeds advice.
   *
   * @param metresPerSecond 0 (stops) to {@link #AS_FAST_AS_WISHED}
   */
  public void goNoFasterThan(double metresPerSecond) {
    if (!(metresPerSecond >= 0 && metresPerSecond <= AS_FAST_AS_WISHED)) {
      throw new IllegalArgumentException(
          "A speed that is not exceeded lies between 0 and 50 m/s, found " + metresPerSecond);
    }
    ceiling = metresPerSecond;
  }

  /** Seconds since the start, in whole steps. */
  public double seconds() {
    return steps * Plant.STEP_SECONDS;
  }

  /** Whether the scenario has come to its end. */
  public boolean isOver() {
    return (steps + 1) * Plant.STEP_SECONDS > lasts() + 1e-9;
  }

  /** What one sensor says now. */
  public double read(Sensor sensor) {
    return plant.read(sensor);
  }

  /** The truth behind the sensors. */
  public PlantState state() {
    return plant.state();
  }

  /** Where the vehicle is, or empty on a dynamometer. */
  public Optional<Road.Place> place() {
    return switch (scenario.course()) {
      case Course.OnRoad onRoad -> Optional.of(onRoad.road().at(plant.distance()));
      case Course.OnDynamometer _ -> Optional.empty();
    };
  }

  /** Whether the vehicle is where no satellite is seen: in a tunnel, or indoors. */
  public boolean isUnderRoof() {
    return switch (scenario.course()) {
      case Course.OnRoad onRoad -> onRoad.road().isInTunnel(plant.distance());
      case Course.OnDynamometer _ -> true;
    };
  }

  private double lasts() {
    Duration duration = scenario.duration();
    return duration.toMillis() / 1000.0;
  }

  private void blow() {
    double keep = Math.exp(-Plant.STEP_SECONDS / GUST_SECONDS);
    gust = keep * gust + Math.sqrt(1 - keep * keep) * gusts.nextGaussian();
  }

  private Surroundings around(double metres) {
    return switch (scenario.course()) {
      case Course.OnRoad onRoad -> onTheRoad(onRoad, onRoad.road().at(metres));
      case Course.OnDynamometer indoors ->
          new Surroundings(0, indoors.celsius(), Weather.kilopascals(indoors.altitude()), 0);
    };
  }

  private Surroundings onTheRoad(Course.OnRoad onRoad, Road.Place place) {
    Weather weather = onRoad.weather();
    double wind = weather.headwindMetresPerSecond() + gust * weather.gustMetresPerSecond();
    return new Surroundings(
        place.gradePercent() / 100,
        weather.celsius(place.altitude() - onRoad.road().startAltitude()),
        Weather.kilopascals(place.altitude()),
        Math.clamp(wind, -40.0, 40.0));
  }

  private Duty duty(double metres) {
    return switch (scenario.course()) {
      case Course.OnRoad onRoad ->
          new Duty.HoldSpeed(Math.min(ceiling, Course.wishAt(onRoad.wishes(), metres)));
      case Course.OnDynamometer indoors ->
          new Duty.HoldTorque(
              indoors.gear(),
              indoors.metresPerSecond(),
              Course.wishAt(indoors.wishes(), seconds()),
              indoors.coolingMetresPerSecond());
    };
  }
}
