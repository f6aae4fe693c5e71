package steadypull.thermal;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.plant.WarmStart;
import steadypull.demo.road.Course;
import steadypull.demo.road.Road;
import steadypull.demo.road.Scenario;
import steadypull.demo.road.Weather;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * Rigs, roads and weathers drawn at random, so that a forecaster cannot be fitted to the two or
 * three drives that everybody looks at. The same number gives the same world.
 */
final class InventedWorlds {
  /** Air-to-air coolers let charge air less hot, so their engines cut power earlier. */
  private static final double AIR_TO_AIR_LIMIT = 80;

  private static final double ROAD_METRES = 60_000;
  private static final Duration LASTS = Duration.ofMinutes(35);

  /** A world and the vehicle file that its driver would have written. */
  record World(int number, Scenario scenario, Vehicle vehicle) {}

  private InventedWorlds() {}

  static World world(int number) {
    Random random = new Random(number * 7919L);
    boolean isAirToAir = random.nextInt(3) == 0;
    Rig rig = rig(random);
    if (isAirToAir) {
      rig =
          rig.cooledBy(Rig.Cooling.AIR_TO_AIR)
              .with(RigTrait.DERATE_CHARGE_AIR_DEGC, AIR_TO_AIR_LIMIT);
    }
    Scenario scenario =
        DemoWorld.scenario("long-hot-grade").orElseThrow().with(rig).with(course(random));
    return new World(
        number,
        new Scenario(
            "world",
            scenario.sentence(),
            LASTS,
            scenario.vehicleName(),
            scenario.vehicleFile(),
            scenario.rig(),
            scenario.course()),
        TestVehicles.heavy(
            isAirToAir ? CoolingLayout.AIR_TO_AIR : CoolingLayout.WATER_TO_AIR,
            rig.of(RigTrait.DERATE_CHARGE_AIR_DEGC)));
  }

  private static Rig rig(Random random) {
    return Rig.usual()
        .with(RigTrait.MASS_KG, between(random, 4500, 9000))
        .with(RigTrait.CHARGE_RADIATOR_W_PER_K, between(random, 170, 420))
        .with(RigTrait.CHARGE_CIRCUIT_LITRES, between(random, 4, 12))
        .with(RigTrait.CHARGE_COOLER_W_PER_K, between(random, 400, 900))
        .with(RigTrait.CLOGGED_SHARE, between(random, 0, 0.35))
        .with(RigTrait.ENGINE_RADIATOR_W_PER_K, between(random, 1300, 2400))
        .with(RigTrait.ENGINE_HEAT_CAPACITY_J_PER_K, between(random, 100e3, 220e3))
        .with(RigTrait.COMPRESSOR_EFFICIENCY, between(random, 0.62, 0.76))
        .with(RigTrait.AIR_CONDITIONING_W, between(random, 0, 6000))
        .with(RigTrait.FAN_AIR_M_PER_S, between(random, 8, 20))
        .with(RigTrait.SENSOR_LAG, between(random, 0.5, 2))
        .with(RigTrait.THERMOSTAT_OPENS_DEGC, between(random, 80, 88))
        .with(RigTrait.OIL_COOLER_W_PER_K, between(random, 500, 1200))
        .with(RigTrait.GEARBOX_COOLER_W_PER_K, between(random, 50, 140))
        .with(RigTrait.DRAG_AREA_M2, between(random, 2.5, 5.5));
  }

  private static Course course(Random random) {
    double celsius = between(random, 5, 42);
    return new Course.OnRoad(
        road(random),
        new Weather(celsius, between(random, -6, 6), between(random, 0.5, 3)),
        List.of(
            new Course.Wish(0, between(random, 70, 90) / 3.6),
            new Course.Wish(15_000, between(random, 60, 95) / 3.6)),
        new WarmStart(celsius + 12, 87, 90, 70, 0));
  }

  /** Rolling country and climbs in turn, as chance will have it. */
  private static Road road(Random random) {
    List<Road.Knot> knots = new ArrayList<>(List.of(new Road.Knot(0, 0.2)));
    boolean isClimb = false;
    for (double metres = 0; metres < ROAD_METRES; metres += 1) {
      double grade = isClimb ? between(random, 3.5, 7.5) : between(random, -3, 3);
      double length = isClimb ? between(random, 1500, 7000) : between(random, 500, 3000);
      knots.add(new Road.Knot(metres + 300, grade));
      metres += length;
      knots.add(new Road.Knot(metres, grade));
      isClimb = isClimb ^ random.nextInt(3) == 0;
    }
    return new Road("invented", knots, -38.2, -129.4, 300);
  }

  private static double between(Random random, double from, double to) {
    return from + (to - from) * random.nextDouble();
  }
}
