package steadypull.demo.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Drive;

/**
 * The vehicle on the bench: a drive under way with its control units. Times on the bench's clock.
 */
final class BenchVehicle {
  /** Supply at the plug (common practice, no source): charging, resting, under the starter. */
  private static final double CHARGING_VOLTS = 14.1;

  private static final double RESTING_VOLTS = 12.4;
  private static final double CRANKING_VOLTS = 8.6;

  /** Several sensors behind one parameter came with CAN: the sheet of transports, section 3. */
  private static final int LAST_PARAMETER_BEFORE_CAN = 0x5F;

  private final BenchSettings settings;
  private final Drive drive;
  private final List<ControlUnit> controlUnits;
  private final ControlUnit talkative;
  private double seconds;

  BenchVehicle(BenchSettings settings) {
    this.settings = settings;
    drive = new Drive(settings.scenario(), settings.seed());
    controlUnits = List.of(EngineUnit.of(this), GearboxUnit.of(this));
    talkative = TalkativeUnit.of(this);
  }

  VehicleTraits traits() {
    return settings.vehicle();
  }

  /** Lets the drive go on to a time; a code noticed on the way freezes what is then. */
  void advanceTo(double until) {
    for (ControlUnit unit : byFreezing()) {
      Optional<StoredCode> code = unit.troubles().toFreeze();
      if (code.isPresent() && code.get().fromSeconds() <= until) {
        drive.advanceTo(settings.startSeconds() + code.get().fromSeconds());
        unit.troubles().freeze(code.get(), unit.parameters());
      }
    }
    seconds = until;
    drive.advanceTo(settings.startSeconds() + until);
  }

  private List<ControlUnit> byFreezing() {
    return settings.vehicle().codes().isEmpty()
        ? List.of()
        : controlUnits.stream().sorted(Comparator.comparingDouble(BenchVehicle::freezing)).toList();
  }

  private static double freezing(ControlUnit unit) {
    return unit.troubles().toFreeze().map(StoredCode::fromSeconds).orElse(Double.MAX_VALUE);
  }

  /** Whether the control units answer: somebody drives and nobody put them to sleep. */
  boolean isAwake(double at) {
    return at < settings.lasts() && !settings.has(Fault.Kind.ENGINE_OFF, at) && !isCranking(at);
  }

  private boolean isCranking(double at) {
    return settings.has(Fault.Kind.LV_RESET, at);
  }

  /** Whether the generator charges. */
  boolean isRunning(double at) {
    return isAwake(at) && !settings.has(Fault.Kind.ENGINE_STOPPED, at);
  }

  /** Voltage at the plug. */
  double supplyVolts(double at) {
    if (isCranking(at)) {
      return CRANKING_VOLTS;
    }
    return isRunning(at) ? CHARGING_VOLTS : RESTING_VOLTS;
  }

  /** The control units that are awake at a time. */
  List<ControlUnit> controlUnits(double at) {
    if (!settings.has(Fault.Kind.INTERLEAVED, at)) {
      return controlUnits;
    }
    List<ControlUnit> more = new ArrayList<>(controlUnits);
    more.add(talkative);
    return more;
  }

  /** Parameters as far as the vehicle's bus has them. */
  Parameters fitted(Parameters parameters) {
    return settings.vehicle().protocol().isCan()
        ? parameters
        : parameters.upTo(LAST_PARAMETER_BEFORE_CAN);
  }

  /** The trouble codes of the gearbox or of everything else. */
  List<StoredCode> codes(boolean isOfGearbox) {
    return settings.vehicle().codes().stream()
        .filter(code -> code.isOfGearbox() == isOfGearbox)
        .toList();
  }

  double read(Sensor sensor) {
    boolean isRunning = !settings.has(Fault.Kind.ENGINE_STOPPED, seconds);
    return switch (sensor) {
      case ENGINE_SPEED, VEHICLE_SPEED, ENGINE_LOAD, FUEL_RATE, AIR_FLOW ->
          isRunning ? drive.read(sensor) : 0;
      case SUPPLY_VOLTAGE -> isRunning ? drive.read(sensor) : RESTING_VOLTS;
      default -> drive.read(sensor);
    };
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
