package steadypull.backtest;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.plant.WarmStart;
import steadypull.demo.road.Course;
import steadypull.demo.road.Road;
import steadypull.demo.road.Scenario;
import steadypull.demo.road.Weather;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.DefaultLimits;
import steadypull.vehicle.Driveline;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.SpeedRange;
import steadypull.vehicle.Vehicle;

/**
 * An hour of towing with a rig, a road and a weather drawn at random: engine and trailer that more
 * or less fit each other, coolers of many sizes, some of them dirty, weak fans, slow sensors,
 * gusts, high country. The same number gives the same world.
 *
 * @param number of the world
 * @param scenario the rig, the road and how it is driven
 * @param vehicle what its owner wrote down: limits where the engine control begins or a little
 *     below, the mass up to 20 % beside the truth, usual figures for drag and rolling
 * @param missing channels that this vehicle does not tell
 */
record TowingWorld(int number, Scenario scenario, Vehicle vehicle, Set<Channel> missing) {
  private static final double KILOMETRES_PER_HOUR = 3.6;
  private static final double ROAD_METRES = 95_000;
  private static final Duration LASTS = Duration.ofHours(1);
  private static final List<Double> SIX_GEARS = List.of(3.9, 2.3, 1.55, 1.15, 0.87, 0.69);
  private static final List<Double> EIGHT_GEARS =
      List.of(4.7, 3.1, 2.1, 1.67, 1.29, 1.0, 0.84, 0.67);

  private static final List<Channel> OFTEN_MISSING =
      List.of(
          Channels.AIR_MASS_FLOW,
          Channels.CHARGE_AIR_TEMP_IN,
          Channels.INTAKE_AIR_TEMP,
          Channels.FUEL_RATE,
          Channels.DEMANDED_TORQUE,
          Channels.ENGINE_LOAD,
          Channels.ACCELERATOR_PEDAL,
          Channels.EXHAUST_TEMP_BEFORE_TURBINE,
          Channels.ENGINE_OIL_TEMP,
          Channels.TRANSMISSION_FLUID_TEMP,
          Channels.BAROMETRIC_PRESSURE);

  /** A world for an hour. */
  static TowingWorld of(int number) {
    return of(number, LASTS);
  }

  /** The beginning of a world. */
  static TowingWorld of(int number, Duration lasts) {
    Random random = new Random(number * 104_729L + 17);
    return drawn(number, rig(random), random, lasts);
  }

  /**
   * Another drive of a world's vehicle, on another road in another weather, some with the air
   * conditioning on.
   *
   * @param trip from 1 on; the same number gives the same drive
   */
  TowingWorld again(int trip) {
    Random random = new Random(number * 7919L + trip * 1_000_003L);
    Rig rig =
        scenario
            .rig()
            .with(
                RigTrait.AIR_CONDITIONING_W,
                random.nextBoolean() ? 0 : between(random, 2000, 6000));
    Scenario other = drawn(number, rig, random, LASTS).scenario();
    return new TowingWorld(number, other, vehicle, missing);
  }

  private static TowingWorld drawn(int number, Rig rig, Random random, Duration lasts) {
    Scenario usual = DemoWorld.scenario("long-hot-grade").orElseThrow();
    Scenario scenario =
        new Scenario(
            "world",
            "World " + number,
            lasts,
            usual.vehicleName(),
            usual.vehicleFile(),
            rig,
            course(random));
    return new TowingWorld(number, scenario, vehicle(random, rig), missing(random, rig));
  }

  /** The road of this world. */
  Road road() {
    return (Road) ((Course.OnRoad) scenario.course()).road();
  }

  private static Rig rig(Random random) {
    boolean isAirToAir = random.nextInt(5) < 2;
    double torque = between(random, 430, 1050);
    double size = torque / 640;
    double mass = 7200 * size * between(random, 0.45, 1.25);
    double fanEngages = between(random, 93, 104);
    Rig usual = Rig.usual();
    List<Double> gears =
        random.nextInt(3) == 0
            ? SIX_GEARS
            : random.nextBoolean() ? EIGHT_GEARS : usual.gearRatios();
    return new Rig(
            isAirToAir ? Rig.Cooling.AIR_TO_AIR : Rig.Cooling.WATER_TO_AIR, gears, usual.traits())
        .with(RigTrait.MASS_KG, mass)
        .with(RigTrait.PEAK_TORQUE_NM, torque)
        .with(RigTrait.REFERENCE_TORQUE_NM, torque * between(random, 1.1, 1.25))
        .with(RigTrait.DISPLACEMENT_L, 4.5 * size * between(random, 0.85, 1.15))
        .with(RigTrait.AXLE_RATIO, between(random, 3.3, 4.1))
        .with(RigTrait.DRAG_AREA_M2, between(random, 2.5, 6))
        .with(RigTrait.ROLLING_RESISTANCE, between(random, 0.007, 0.014))
        .with(RigTrait.GEARBOX_EFFICIENCY, between(random, 0.95, 0.98))
        .with(RigTrait.AIR_FUEL_RATIO, between(random, 20, 27))
        .with(RigTrait.INDICATED_EFFICIENCY, between(random, 0.43, 0.48))
        .with(RigTrait.COOLANT_HEAT_SHARE, between(random, 0.14, 0.21))
        .with(RigTrait.COMPRESSOR_EFFICIENCY, between(random, 0.62, 0.77))
        .with(RigTrait.COMPRESSOR_HOUSING_LAG_S, between(random, 4, 18))
        .with(RigTrait.INLET_HEATING_K, between(random, 1, 14))
        .with(RigTrait.CHARGE_COOLER_W_PER_K, size * between(random, 380, 850))
        .with(RigTrait.CHARGE_CIRCUIT_LITRES, between(random, 4, 14))
        .with(RigTrait.CHARGE_CIRCUIT_METAL_J_PER_K, between(random, 2000, 12_000))
        .with(RigTrait.CHARGE_PUMP_L_PER_MIN, between(random, 8, 30))
        .with(RigTrait.CHARGE_RADIATOR_W_PER_K, size * between(random, 170, 420))
        .with(RigTrait.ENGINE_HEAT_CAPACITY_J_PER_K, size * between(random, 100e3, 220e3))
        .with(RigTrait.ENGINE_RADIATOR_W_PER_K, size * between(random, 1400, 2600))
        .with(RigTrait.THERMOSTAT_OPENS_DEGC, between(random, 80, 89))
        .with(RigTrait.FAN_AIR_M_PER_S, between(random, 3, 20))
        .with(RigTrait.FAN_ENGAGES_DEGC, fanEngages)
        .with(RigTrait.FAN_FULL_DEGC, fanEngages + between(random, 4, 12))
        .with(RigTrait.FAN_LAG_S, between(random, 5, 30))
        .with(RigTrait.OIL_COOLER_W_PER_K, size * between(random, 500, 1200))
        .with(RigTrait.GEARBOX_COOLER_W_PER_K, size * between(random, 50, 150))
        .with(RigTrait.CLOGGED_SHARE, random.nextInt(3) == 0 ? between(random, 0.1, 0.45) : 0)
        .with(RigTrait.RAM_SHARE, between(random, 0.7, 1.1))
        .with(RigTrait.AIR_CONDITIONING_W, random.nextBoolean() ? 0 : between(random, 2000, 6000))
        .with(
            RigTrait.DERATE_CHARGE_AIR_DEGC,
            isAirToAir ? between(random, 70, 110) : between(random, 90, 125))
        .with(RigTrait.DERATE_CHARGE_COOLANT_DEGC, between(random, 85, 118))
        .with(RigTrait.DERATE_ENGINE_COOLANT_DEGC, between(random, 106, 118))
        .with(RigTrait.DERATE_SHARE_PER_K, between(random, 0.02, 0.04))
        .with(RigTrait.SENSOR_NOISE, between(random, 0.5, 2))
        .with(RigTrait.SENSOR_LAG, between(random, 0.5, 2.5));
  }

  private static Course course(Random random) {
    double altitude = random.nextInt(3) == 0 ? between(random, 800, 2500) : between(random, 0, 500);
    double celsius = between(random, 0, 42) - altitude / 250;
    return new Course.OnRoad(
        road(random, altitude),
        new Weather(celsius, 4 * random.nextGaussian(), between(random, 0.5, 3)),
        wishes(random),
        new WarmStart(celsius + between(random, 5, 25), between(random, 60, 88), 80, 60, 0));
  }

  /** Speeds that the driver likes; on one road in three slow traffic ever so often. */
  private static List<Course.Wish> wishes(Random random) {
    boolean isBusy = random.nextInt(3) == 0;
    List<Course.Wish> wishes = new ArrayList<>();
    double speed = between(random, 75, 95) / KILOMETRES_PER_HOUR;
    for (double metres = 0; metres < ROAD_METRES; ) {
      wishes.add(new Course.Wish(metres, speed));
      double until = metres + between(random, 6000, 25_000);
      if (isBusy) {
        double from = metres + between(random, 2000, 5500);
        wishes.add(new Course.Wish(from, between(random, 25, 55) / KILOMETRES_PER_HOUR));
        wishes.add(new Course.Wish(from + between(random, 300, 1500), speed));
        until = Math.max(until, from + 2000);
      }
      metres = until;
      speed = between(random, 68, 98) / KILOMETRES_PER_HOUR;
    }
    return wishes;
  }

  /** Two vehicles in five lack one to four channels; one in twenty tells no torque. */
  private static Set<Channel> missing(Random random, Rig rig) {
    Set<Channel> missing = new HashSet<>();
    if (rig.cooling() == Rig.Cooling.AIR_TO_AIR) {
      missing.add(Channels.CHARGE_COOLANT_TEMP);
    }
    if (random.nextInt(5) < 2) {
      for (int count = 1 + random.nextInt(4); count > 0; count--) {
        missing.add(OFTEN_MISSING.get(random.nextInt(OFTEN_MISSING.size())));
      }
    }
    if (random.nextInt(20) == 0) {
      missing.add(Channels.DELIVERED_TORQUE);
    }
    return Set.copyOf(missing);
  }

  /** Rolling country, climbs and descents in turn, as chance will have it. */
  private static Road road(Random random, double altitude) {
    List<Road.Knot> knots = new ArrayList<>(List.of(new Road.Knot(0, 0.2)));
    double metres = 0;
    double height = 0;
    double until = between(random, 3000, 8000);
    while (metres < ROAD_METRES) {
      while (metres < until) {
        double length = between(random, 400, 2500);
        height += piece(knots, metres, length, between(random, -2.5, 2.5));
        metres += length;
      }
      double length = between(random, 2000, 11_000);
      boolean isUp = height < 150 || (height < 900 && random.nextInt(3) > 0);
      double mean = (isUp ? 1 : -1) * between(random, 3.2, 7.5);
      for (double end = metres + length; metres < end; ) {
        double part = Math.min(end - metres + 100, between(random, 500, 2500));
        height += piece(knots, metres, part, mean + random.nextGaussian());
        metres += part;
      }
      until = metres + between(random, 1500, 12_000);
    }
    return new Road("invented", knots, -38.2, -129.4, altitude);
  }

  private static double piece(List<Road.Knot> knots, double from, double length, double percent) {
    double grade = Math.clamp(percent, -9, 9.5);
    knots.add(new Road.Knot(from + Math.min(200, length / 2), grade));
    knots.add(new Road.Knot(from + length, grade));
    return length * grade / 100;
  }

  private static Vehicle vehicle(Random random, Rig rig) {
    boolean isWater = rig.cooling() == Rig.Cooling.WATER_TO_AIR;
    CoolingLayout layout = isWater ? CoolingLayout.WATER_TO_AIR : CoolingLayout.AIR_TO_AIR;
    Map<String, Limit> limits = new LinkedHashMap<>(DefaultLimits.of(layout));
    double careful = random.nextInt(3) == 0 ? between(random, 0, 2) : 0;
    put(limits, Channels.CHARGE_AIR_TEMP_OUT, rig.of(RigTrait.DERATE_CHARGE_AIR_DEGC) - careful);
    put(
        limits,
        Channels.ENGINE_COOLANT_TEMP,
        rig.of(RigTrait.DERATE_ENGINE_COOLANT_DEGC) - careful);
    if (isWater) {
      put(
          limits,
          Channels.CHARGE_COOLANT_TEMP,
          rig.of(RigTrait.DERATE_CHARGE_COOLANT_DEGC) - careful);
    }
    double mass =
        rig.of(RigTrait.MASS_KG) * (1 + 0.08 * Math.clamp(random.nextGaussian(), -2.5, 2.5));
    return new Vehicle(
        "Wattle 9",
        layout,
        limits,
        new steadypull.vehicle.Rig(
            OptionalDouble.of(mass),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.of(rig.of(RigTrait.TYRE_RADIUS_M))),
        Driveline.unknown(),
        SpeedRange.DEFAULT,
        List.of(),
        List.of());
  }

  private static void put(Map<String, Limit> limits, Channel channel, double celsius) {
    limits.put(
        channel.id(),
        new Limit(channel, celsius, new Provenance(Provenance.Kind.MAKER, "invented")));
  }

  private static double between(Random random, double from, double to) {
    return from + (to - from) * random.nextDouble();
  }
}
