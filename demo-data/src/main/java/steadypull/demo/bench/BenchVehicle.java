package steadypull.demo.bench;

import java.util.List;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Drive;

/**
 * The vehicle on the bench: a drive under way with its control units. Times on the bench's clock.
 */
final class BenchVehicle {
  private final BenchSettings settings;
  private final Drive drive;
  private final List<ControlUnit> controlUnits;

  BenchVehicle(BenchSettings settings) {
    this.settings = settings;
    drive = new Drive(settings.scenario(), settings.seed());
    controlUnits = List.of(new EngineUnit(this), new GearboxUnit(this));
  }

  /** Lets the drive go on to a time. */
  void advanceTo(double seconds) {
    drive.advanceTo(settings.startSeconds() + seconds);
  }

  /** Whether the control units answer: the engine runs and nobody put them to sleep. */
  boolean isAwake(double seconds) {
    return seconds < settings.lasts() && !settings.has(Fault.Kind.ENGINE_OFF, seconds);
  }

  List<ControlUnit> controlUnits() {
    return controlUnits;
  }

  double read(Sensor sensor) {
    return drive.read(sensor);
  }

  /** Seconds since the engine was started. */
  double runSeconds() {
    return drive.seconds();
  }

  double gearRatio() {
    List<Double> ratios = settings.scenario().rig().gearRatios();
    return ratios.get((int) Math.round(drive.read(Sensor.GEAR)) - 1);
  }
}
