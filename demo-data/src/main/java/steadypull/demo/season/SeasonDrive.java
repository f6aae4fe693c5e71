package steadypull.demo.season;

import java.util.Optional;
import java.util.Random;
import steadypull.demo.plant.Plant;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.plant.Sensor;
import steadypull.demo.plant.WarmStart;
import steadypull.demo.road.Road;

/** A vehicle under way on an outing. Time only moves when told to. One thread at a time. */
final class SeasonDrive {
  private static final double RESTING_VOLTS = 12.4; // common practice, no source
  private static final double GUST_SECONDS = 8;
  private static final double GUST_KEEPS = Math.exp(-Plant.STEP_SECONDS / GUST_SECONDS);
  private static final double GUST_BRINGS = Math.sqrt(1 - GUST_KEEPS * GUST_KEEPS);

  private final Guide guide;
  private final Plant plant;
  private final Random gusts;
  private double gust;
  private long steps;
  private boolean isStopped;

  SeasonDrive(Rig rig, Outing outing, WarmStart start, long seed) {
    guide =
        switch (outing) {
          case Outing.OnTheRoad road -> new RoadGuide(road, rig.of(RigTrait.ROLLING_RESISTANCE));
          case Outing.OnRollers rollers -> new RollerGuide(rollers);
        };
    gusts = new Random(seed ^ 0x5eedL);
    plant = new Plant(rig, start, guide.around(0), seed);
  }

  /** Drives on to a time, in s since the start, or to the end of the outing. */
  void advanceTo(double seconds) {
    while (!guide.isOver() && (steps + 1) * Plant.STEP_SECONDS <= seconds + 1e-9) {
      gust = GUST_KEEPS * gust + GUST_BRINGS * gusts.nextGaussian();
      plant.step(guide.around(gust), guide.duty());
      guide.look(plant.distance(), plant.speed(), Plant.STEP_SECONDS);
      steps++;
    }
  }

  /** Whether the outing has come to its end. */
  boolean isOver() {
    return guide.isOver();
  }

  /** The engine stands still from now on, the ignition stays on. */
  void stopEngine() {
    isStopped = true;
  }

  /** What one sensor says now. */
  double read(Sensor sensor) {
    if (!isStopped) {
      return plant.read(sensor);
    }
    return switch (sensor) {
      case ENGINE_SPEED,
          VEHICLE_SPEED,
          ENGINE_LOAD,
          FUEL_RATE,
          AIR_FLOW,
          PEDAL,
          DEMANDED_TORQUE,
          DELIVERED_TORQUE ->
          0;
      case MANIFOLD_PRESSURE -> plant.read(Sensor.BAROMETER);
      case SUPPLY_VOLTAGE -> RESTING_VOLTS;
      default -> plant.read(sensor);
    };
  }

  /** Where the receiver is, or empty if no satellite is seen there. */
  Optional<Road.Place> place() {
    return guide.place();
  }

  Optional<String> takeMark() {
    return guide.takeMark();
  }
}
