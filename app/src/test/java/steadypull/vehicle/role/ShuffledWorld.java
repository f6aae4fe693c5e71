package steadypull.vehicle.role;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.plant.Sensor;
import steadypull.demo.plant.WarmStart;
import steadypull.demo.road.Course;
import steadypull.demo.road.Drive;
import steadypull.demo.road.Scenario;
import steadypull.demo.road.Weather;
import steadypull.vehicle.CoolingLayout;

/** A rig, a weather and a numbering of sensors drawn at random; the same seed gives the same. */
final class ShuffledWorld {
  private final Random random;
  private final boolean isWaterCooled;
  private final Rig rig;

  /** The true place of each sensor that can be told. */
  final Map<Channel, String> truth = new LinkedHashMap<>();

  final WiredVehicle vehicle = new WiredVehicle();

  ShuffledWorld(long seed) {
    random = new Random(seed * 7919);
    isWaterCooled = random.nextBoolean();
    rig = rig();
    wireAir();
    wireWater();
    wireExhaust();
    vehicle.askedEvery(1 + random.nextInt(10));
  }

  CoolingLayout layout() {
    return isWaterCooled ? CoolingLayout.WATER_TO_AIR : CoolingLayout.AIR_TO_AIR;
  }

  Drive drive() {
    Scenario scenario = DemoWorld.scenario("long-hot-grade").orElseThrow().with(rig);
    Course.OnRoad usual = (Course.OnRoad) scenario.course();
    double celsius = between(-5, 42);
    WarmStart start =
        random.nextBoolean()
            ? new WarmStart(celsius, celsius, celsius, celsius, 0)
            : new WarmStart(celsius + 12, 87, 90, 70, 0);
    Weather weather = new Weather(celsius, between(-6, 6), between(0.5, 3));
    return DemoWorld.drive(
        scenario.with(new Course.OnRoad(usual.road(), weather, usual.wishes(), start)),
        random.nextLong());
  }

  private Rig rig() {
    return Rig.usual()
        .cooledBy(isWaterCooled ? Rig.Cooling.WATER_TO_AIR : Rig.Cooling.AIR_TO_AIR)
        .with(RigTrait.MASS_KG, between(4500, 9000))
        .with(RigTrait.CHARGE_RADIATOR_W_PER_K, between(170, 420))
        .with(RigTrait.CHARGE_CIRCUIT_LITRES, between(4, 12))
        .with(RigTrait.CHARGE_COOLER_W_PER_K, between(400, 900))
        .with(RigTrait.COMPRESSOR_EFFICIENCY, between(0.62, 0.78))
        .with(RigTrait.COMPRESSOR_HOUSING_LAG_S, between(2, 25))
        .with(RigTrait.CLOGGED_SHARE, between(0, 0.35))
        .with(RigTrait.INLET_HEATING_K, between(0, 12))
        .with(RigTrait.AIR_CONDITIONING_W, between(0, 6000))
        .with(RigTrait.SENSOR_LAG, between(0.5, 2))
        .with(RigTrait.SENSOR_NOISE, between(0, 3));
  }

  private void wireAir() {
    List<String> keys =
        shuffled("01.0F", "01.68.1", "01.68.2", "01.75.1", "01.75.2", "01.77.1", "01.77.2");
    place(Channels.CHARGE_AIR_TEMP_IN, keys.get(0), Sensor.CHARGE_AIR_IN);
    place(Channels.CHARGE_AIR_TEMP_OUT, keys.get(1), Sensor.CHARGE_AIR_OUT);
    vehicle.wire(keys.get(2), Sensor.INTAKE_AIR);
  }

  private void wireWater() {
    boolean hasOwnParameter = random.nextBoolean();
    List<String> pair = shuffled("01.67.1", "01.67.2");
    if (hasOwnParameter) {
      vehicle.wire("01.05", Sensor.ENGINE_COOLANT).wire(pair.get(0), Sensor.ENGINE_COOLANT);
    } else {
      place(Channels.ENGINE_COOLANT_TEMP, pair.get(0), Sensor.ENGINE_COOLANT);
    }
    if (isWaterCooled) {
      place(Channels.CHARGE_COOLANT_TEMP, pair.get(1), Sensor.CHARGE_COOLANT);
    }
  }

  private void wireExhaust() {
    List<String> keys = shuffled("01.75.3", "01.75.4", "01.78.1", "01.78.2", "01.78.3", "01.79.1");
    place(Channels.EXHAUST_TEMP_BEFORE_TURBINE, keys.get(0), Sensor.EXHAUST_BEFORE_TURBINE);
    place(Channels.EXHAUST_TEMP_AFTER_TURBINE, keys.get(1), Sensor.EXHAUST_AFTER_TURBINE);
    if (random.nextBoolean()) {
      SlowMean brick = new SlowMean(between(90, 240));
      truth.put(Channels.EXHAUST_TEMP_AFTER_TREATMENT, keys.get(2));
      vehicle.wire(
          keys.get(2),
          drive ->
              brick.next(
                  Math.round(drive.seconds() * 1e6),
                  drive.read(Sensor.EXHAUST_AFTER_TURBINE) - 15));
    }
  }

  private void place(Channel channel, String key, Sensor sensor) {
    truth.put(channel, key);
    vehicle.wire(key, sensor);
  }

  private List<String> shuffled(String... keys) {
    List<String> shuffled = new ArrayList<>(List.of(keys));
    Collections.shuffle(shuffled, random);
    return shuffled;
  }

  private double between(double from, double to) {
    return from + (to - from) * random.nextDouble();
  }
}
