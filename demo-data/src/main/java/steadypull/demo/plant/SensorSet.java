package steadypull.demo.plant;

import java.util.EnumMap;
import java.util.Map;
import java.util.Random;

/**
 * Every sensor with its lag and its noise. The noise is drawn ten times a second, in enum order.
 */
final class SensorSet {
  private static final double DRAW_SECONDS = 0.1;
  private static final double FUEL_KILOGRAMS_PER_LITRE = 0.835; // EN 590, middle of 0.82 to 0.845
  private static final double SUPPLY_VOLTS = 14.1; // generator charging, common practice

  private final Map<Sensor, Fitted> fitted = new EnumMap<>(Sensor.class);
  private final double noiseFactor;
  private final double referenceTorque;
  private final Random random;
  private double sinceDraw = DRAW_SECONDS;

  SensorSet(Rig rig, long seed, PlantState start) {
    noiseFactor = rig.of(RigTrait.SENSOR_NOISE);
    referenceTorque = rig.of(RigTrait.REFERENCE_TORQUE_NM);
    random = new Random(seed);
    for (Sensor sensor : Sensor.values()) {
      double lag = Math.max(1e-6, sensor.lagSeconds() * rig.of(RigTrait.SENSOR_LAG));
      fitted.put(sensor, new Fitted(sensor, new Lag(lag, truth(sensor, start))));
    }
  }

  void step(double span, PlantState state) {
    sinceDraw += span;
    boolean draws = sinceDraw >= DRAW_SECONDS - 1e-9;
    for (Fitted each : fitted.values()) {
      each.lag.follow(truth(each.sensor, state), span);
      if (draws) {
        each.noise = random.nextGaussian() * each.sensor.noise() * noiseFactor;
      }
    }
    sinceDraw = draws ? 0 : sinceDraw;
  }

  /** What the control unit itself works with: lagged, not yet cut. */
  double inside(Sensor sensor) {
    return of(sensor).lag.value();
  }

  double read(Sensor sensor) {
    Fitted one = of(sensor);
    return sensor.cut(one.lag.value() + one.noise);
  }

  @SuppressWarnings("NullAway") // every sensor is fitted in the constructor
  private Fitted of(Sensor sensor) {
    return fitted.get(sensor);
  }

  private double truth(Sensor sensor, PlantState state) {
    PlantState.Temperatures hot = state.temperatures();
    PlantState.Work work = state.work();
    double indicated = work.deliveredTorque() + work.frictionTorque();
    double fullIndicated = Math.max(1, work.fullTorque() + work.frictionTorque());
    double percent = 100 / referenceTorque;
    return switch (sensor) {
      case ENGINE_COOLANT -> hot.engineCoolant();
      case CHARGE_COOLANT -> hot.chargeCoolant();
      case CHARGE_AIR_IN -> hot.chargeAirIn();
      case CHARGE_AIR_OUT -> hot.chargeAirOut();
      case INTAKE_AIR -> hot.compressorIn();
      case OUTSIDE_AIR -> hot.outsideAir();
      case ENGINE_OIL -> hot.engineOil();
      case GEARBOX_FLUID -> hot.gearboxFluid();
      case EXHAUST_BEFORE_TURBINE -> hot.exhaustBeforeTurbine();
      case EXHAUST_AFTER_TURBINE -> hot.exhaustAfterTurbine();
      case BAROMETER -> state.around().pressureKilopascals();
      case MANIFOLD_PRESSURE -> work.manifoldPressure();
      case AIR_FLOW -> work.airFlow() * 1000;
      case ENGINE_SPEED -> state.motion().engineSpeed();
      case VEHICLE_SPEED -> state.motion().speed() * 3.6;
      case ENGINE_LOAD -> 100 * Math.max(0, indicated) / fullIndicated;
      case PEDAL ->
          100 * Math.clamp(work.demandedTorque() / Math.max(1, work.fullTorque()), 0.0, 1.0);
      case DEMANDED_TORQUE -> (work.demandedTorque() + work.frictionTorque()) * percent;
      case DELIVERED_TORQUE -> indicated * percent;
      case FRICTION_TORQUE -> work.frictionTorque() * percent;
      case REFERENCE_TORQUE -> referenceTorque;
      case FUEL_RATE -> work.fuel() / FUEL_KILOGRAMS_PER_LITRE * 3600;
      case GEAR -> state.motion().gear();
      case SUPPLY_VOLTAGE -> SUPPLY_VOLTS;
    };
  }

  /** One sensor in its place. */
  private static final class Fitted {
    private final Sensor sensor;
    private final Lag lag;
    private double noise;

    Fitted(Sensor sensor, Lag lag) {
      this.sensor = sensor;
      this.lag = lag;
    }
  }
}
