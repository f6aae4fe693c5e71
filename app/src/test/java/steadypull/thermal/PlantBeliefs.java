package steadypull.thermal;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.PlantState;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.road.Drive;

/**
 * What was learnt of an invented plant on one drive, beside what that plant really has, as far as
 * four figures can stand for it, since it shares no equation with the models: the charge circuit's
 * J/K and W/K, the engine's J/K and W/K.
 *
 * @param live by figure, as the filter believed at the end
 * @param whole by figure, as the smoother believes
 * @param truths by figure; NaN where the drive never showed it
 */
record PlantBeliefs(List<Belief> live, List<Belief> whole, List<Double> truths) {
  private static final double JOULES_PER_LITRE_KELVIN = 1.052 * 3435;
  private static final double WARM_SHARE = 0.35;
  private static final double SPEED_EXPONENT = 0.62;

  /** Drives for some seconds. */
  static PlantBeliefs of(InventedWorlds.World world, int seconds) {
    Drive drive = DemoWorld.drive(world.scenario(), world.number());
    DemoSamples samples = new DemoSamples(drive, Set.of());
    TripIdentification trip = new TripIdentification(world.vehicle().layout());
    OpenRadiator radiator = new OpenRadiator();
    for (int second = 1; second <= seconds && !samples.isOver(); second++) {
      samples.until(second).forEach(trip::accept);
      trip.tick(second * 1_000_000L);
      radiator.accept(drive.state(), world.scenario().rig());
    }
    double circuit = circuitWatts(world.scenario().rig());
    return new PlantBeliefs(
        List.of(
            trip.live(Store.CHARGE_COOLANT, ChargeCoolant.JOULES_PER_KELVIN),
            trip.live(Store.CHARGE_COOLANT, ChargeCoolant.WATTS_PER_KELVIN),
            trip.live(Store.ENGINE_COOLANT, EngineCoolant.JOULES_PER_KELVIN),
            trip.live(Store.ENGINE_COOLANT, EngineCoolant.WATTS_PER_KELVIN)),
        trip.beliefs().stream()
            .flatMap(each -> Stream.of(each.joulesPerKelvin(), each.wattsPerKelvin()))
            .toList(),
        List.of(
            circuitJoules(world.scenario().rig(), circuit),
            circuit,
            world.scenario().rig().of(RigTrait.ENGINE_HEAT_CAPACITY_J_PER_K),
            radiator.wattsPerKelvin()));
  }

  private static double pump(Rig rig) {
    return rig.of(RigTrait.CHARGE_PUMP_L_PER_MIN) / 60 * JOULES_PER_LITRE_KELVIN;
  }

  /**
   * The plant's radiator meets the mean of warm and cold water, the sensor sits in the cold: Q = UA
   * (cold + Q / (2 pump) - air), at 25 m/s.
   */
  private static double circuitWatts(Rig rig) {
    double reaches = rig.of(RigTrait.RAM_SHARE) * (1 - rig.of(RigTrait.CLOGGED_SHARE));
    double radiator = rig.of(RigTrait.CHARGE_RADIATOR_W_PER_K) * Math.pow(reaches, SPEED_EXPONENT);
    return radiator / (1 - radiator / (2 * pump(rig)));
  }

  /**
   * The warm part stands Q / pump above the cold one, so that it stores more when more is given.
   */
  private static double circuitJoules(Rig rig, double watts) {
    double joules =
        rig.of(RigTrait.CHARGE_CIRCUIT_LITRES) * JOULES_PER_LITRE_KELVIN
            + rig.of(RigTrait.CHARGE_CIRCUIT_METAL_J_PER_K);
    return joules * (1 + WARM_SHARE * watts / pump(rig));
  }

  /** What the engine's radiator gave off, thermostat open and fan out, per kelvin of the model. */
  private static final class OpenRadiator {
    private double sum;
    private int count;

    void accept(PlantState state, Rig rig) {
      double celsius = state.temperatures().engineCoolant();
      boolean isOpen = celsius > rig.of(RigTrait.THERMOSTAT_FULL_DEGC) + 0.5;
      if (isOpen && state.heat().fanEngagement() < 0.15) {
        Load load =
            new Load(
                0,
                0,
                state.motion().speed(),
                0,
                0,
                state.temperatures().outsideAir(),
                state.around().pressureKilopascals());
        double given =
            state.heat().fromEngineRadiator() / (celsius - state.temperatures().outsideAir());
        sum += (given - 60) / (load.densityShare() * (0.35 + 0.65 * load.ramAir()));
        count++;
      }
    }

    double wattsPerKelvin() {
      return count < 60 ? Double.NaN : sum / count;
    }
  }
}
