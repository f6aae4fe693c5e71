package steadypull.compare;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.road.Weather;

/**
 * Runs before and after a known change, in different weather, altitude, load, wind and start, with
 * sensors that err, and what the same plant does under the common conditions. The same number gives
 * the same pair.
 *
 * @param number of the pair
 * @param change what was done
 * @param isOnRollers rollers or road
 * @param runs of both sides
 * @param charge truth of the charge coolant
 * @param chargeAir truth of the charge air behind the cooler
 * @param engine truth of the engine coolant
 * @param rig before the change
 */
record PlantPair(
    int number,
    Change change,
    boolean isOnRollers,
    RunSet runs,
    Truth charge,
    Truth chargeAir,
    Truth engine,
    Rig rig) {
  private static final List<Change> CHANGES = List.of(Change.values());
  private static final LocalDate FIRST = LocalDate.of(2031, 5, 1);

  /** Every change in turn. */
  static PlantPair of(int number) {
    return of(number, CHANGES.get(number % CHANGES.size()));
  }

  static PlantPair of(int number, Change change) {
    return new Drawing(number, change).pair();
  }

  private static double between(Random random, double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  private static final class Drawing {
    private final int number;
    private final Change change;
    private final Random random;
    private final Rig rig;
    private final boolean isOnRollers;
    private final Pull usual;
    private final SensorErrors vehicle;
    private final List<Pull.Driven> driven = new ArrayList<>();
    private final List<Pull> pulls = new ArrayList<>();

    Drawing(int number, Change change) {
      this.number = number;
      this.change = change;
      random = new Random(number * 15_485_863L);
      rig = rig();
      isOnRollers = random.nextBoolean();
      vehicle = SensorErrors.ofVehicle(random);
      double speed = between(random, 17, 24);
      double outside = between(random, 8, 32);
      usual =
          new Pull(
              isOnRollers,
              5,
              isOnRollers ? speed * 0.9 : speed,
              between(random, 420, 560),
              outside,
              isOnRollers ? 100 : between(random, 100, 1200),
              0,
              0,
              between(random, 9, 15),
              (int) (isOnRollers ? between(random, 130, 280) : between(random, 200, 420)),
              outside + between(random, 12, 20),
              between(random, 87, 91));
    }

    /** Neighbouring seeds begin alike: the finalizer of MurmurHash3 (public domain) parts them. */
    private static long mixed(int number, int day) {
      long seed = (number * 1000L + day) * 0x9E3779B97F4A7C15L;
      seed = (seed ^ (seed >>> 33)) * 0xFF51AFD7ED558CCDL;
      seed = (seed ^ (seed >>> 33)) * 0xC4CEB9FE1A85EC53L;
      return seed ^ (seed >>> 33);
    }

    private Rig rig() {
      return Rig.usual()
          .with(RigTrait.MASS_KG, between(random, 6000, 9000))
          .with(RigTrait.CHARGE_RADIATOR_W_PER_K, between(random, 180, 380))
          .with(RigTrait.CHARGE_CIRCUIT_LITRES, between(random, 5, 12))
          .with(RigTrait.CHARGE_PUMP_L_PER_MIN, between(random, 12, 26))
          .with(RigTrait.CHARGE_COOLER_W_PER_K, between(random, 400, 900))
          .with(RigTrait.CLOGGED_SHARE, between(random, 0, 0.3))
          .with(RigTrait.ENGINE_RADIATOR_W_PER_K, between(random, 1100, 1900))
          .with(RigTrait.ENGINE_HEAT_CAPACITY_J_PER_K, between(random, 100e3, 200e3))
          .with(RigTrait.COMPRESSOR_EFFICIENCY, between(random, 0.64, 0.75))
          .with(RigTrait.AIR_CONDITIONING_W, random.nextBoolean() ? 0 : 4000)
          .with(RigTrait.FAN_AIR_M_PER_S, between(random, 8, 18))
          .with(RigTrait.SENSOR_LAG, between(random, 0.5, 1.8))
          .with(RigTrait.THERMOSTAT_OPENS_DEGC, between(random, 82, 88))
          .with(RigTrait.DERATE_CHARGE_AIR_DEGC, 190)
          .with(RigTrait.DERATE_CHARGE_COOLANT_DEGC, 190)
          .with(RigTrait.DERATE_ENGINE_COOLANT_DEGC, 150);
    }

    PlantPair pair() {
      int runs = 1 + random.nextInt(4);
      int days = runs > 1 ? 1 + random.nextInt(2) : 1;
      boolean isOneDay = isOnRollers && random.nextBoolean();
      side(Side.BEFORE, 0, runs, days, 0);
      side(Side.AFTER, 1, runs, days, isOneDay ? 0 : 10);
      List<Truth> truths = truths();
      return new PlantPair(
          number,
          change,
          isOnRollers,
          new RunSet(driven.stream().map(Pull.Driven::run).toList(), List.of(), List.of()),
          truths.get(0),
          truths.get(1),
          truths.get(2),
          rig);
    }

    /** Weather, place and load of a side differ; within a side runs differ a little. */
    private void side(Side side, int place, int runs, int days, int fromDay) {
      double warmer = between(random, -6, 6);
      double higher = isOnRollers ? 0 : between(random, -300, 300);
      double heavier = between(random, 0.96, 1.04);
      double faster = between(random, 0.97, 1.03);
      Rig fitted = side == Side.BEFORE ? rig : change.both(rig);
      List<SensorErrors> errors = new ArrayList<>();
      List<Double> winds = new ArrayList<>();
      for (int day = 0; day < days; day++) {
        // A day's errors go with the day, whichever side is driven on it.
        Random ofDay = new Random(mixed(number, fromDay + day));
        errors.add(vehicle.andOfADay(ofDay));
        winds.add(2.0 * ofDay.nextGaussian());
      }
      for (int run = 0; run < runs; run++) {
        int day = run % days;
        double warms = between(random, -1, 1);
        Pull pull =
            new Pull(
                isOnRollers,
                usual.gear(),
                usual.metresPerSecond() * faster * between(random, 0.99, 1.01),
                usual.newtonMetres() * heavier * between(random, 0.99, 1.01),
                usual.outsideCelsius() + warmer + warms,
                Math.max(0, usual.altitude() + higher),
                winds.get(day) + 0.6 * random.nextGaussian(),
                between(random, 0.5, 2),
                usual.fanMetresPerSecond() * (1 + 0.01 * random.nextGaussian()),
                (int) (usual.seconds() * between(random, 0.9, 1.1)),
                usual.chargeCelsius() + warmer + warms + between(random, -2, 2),
                usual.engineCelsius() + between(random, -1, 1));
        pulls.add(pull);
        driven.add(
            pull.drive(
                fitted,
                errors.get(day),
                side,
                place,
                FIRST.plusDays(fromDay + day),
                number * 1000L + place * 100L + run));
      }
    }

    private List<Truth> truths() {
      double speed = middle(d -> d.truth().metresPerSecond());
      Truth.At at =
          new Truth.At(
              driven.getFirst().truth().gear(),
              speed,
              middle(d -> d.truth().newtonMetres()),
              isOnRollers ? middle(d -> pulls.get(driven.indexOf(d)).fanMetresPerSecond()) : speed,
              middle(d -> pulls.get(driven.indexOf(d)).outsideCelsius()),
              middle(d -> Weather.kilopascals(pulls.get(driven.indexOf(d)).altitude())),
              middle(d -> d.truth().chargeStart()),
              middle(d -> d.truth().engineStart()));
      return Truth.of(
          change,
          rig,
          at,
          List.of(
              state -> state.temperatures().chargeCoolant(),
              state -> state.temperatures().chargeAirOut(),
              state -> state.temperatures().engineCoolant()));
    }

    private double middle(ToDoubleFunction<Pull.Driven> figure) {
      return (mean(Side.BEFORE, figure) + mean(Side.AFTER, figure)) / 2;
    }

    private double mean(Side side, ToDoubleFunction<Pull.Driven> figure) {
      return driven.stream()
          .filter(d -> d.run().side() == side)
          .mapToDouble(figure)
          .average()
          .orElseThrow();
    }
  }
}
