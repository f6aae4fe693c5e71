package steadypull.demo.road;

import java.time.Duration;
import java.util.List;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.plant.WarmStart;

/** The scenarios that come with the program. */
public final class Scenarios {
  private static final Road KESTREL_RANGE =
      new Road(
          "Kestrel Range",
          List.of(
              new Road.Knot(0, 0.3),
              new Road.Knot(900, 0.8),
              new Road.Knot(1800, -0.6),
              new Road.Knot(2700, 1.8),
              new Road.Knot(3300, 2.2),
              new Road.Knot(3900, -1.2),
              new Road.Knot(4600, 0.4),
              new Road.Knot(5300, 2.6),
              new Road.Knot(5800, 0.2),
              new Road.Knot(6300, 0.6),
              new Road.Knot(6700, 4.4),
              new Road.Knot(8500, 5.0),
              new Road.Knot(9600, 6.1),
              new Road.Knot(12_500, 6.3),
              new Road.Knot(15_500, 6.4),
              new Road.Knot(17_300, 5.6),
              new Road.Knot(17_900, 0.5),
              new Road.Knot(18_600, -2.5),
              new Road.Knot(20_500, -2.0),
              new Road.Knot(21_500, 0.8),
              new Road.Knot(24_000, -0.5)),
          -38.2,
          -129.4,
          140);

  private static final List<Course.Wish> TOWING_SPEEDS =
      List.of(new Course.Wish(0, 82 / 3.6), new Course.Wish(2600, 90 / 3.6));

  private static final Scenario LONG_HOT_GRADE =
      new Scenario(
          "long-hot-grade",
          "A heavy trailer climbs the Kestrel Range at 38 °C until the engine cuts power.",
          Duration.ofMinutes(17),
          "Wattle 2",
          "wattle-2.json",
          Rig.usual(),
          new Course.OnRoad(
              KESTREL_RANGE,
              new Weather(38, 1.5, 1),
              TOWING_SPEEDS,
              new WarmStart(52, 88, 94, 78, 0)));

  private static final Scenario COOL_DAY =
      new Scenario(
          "cool-day",
          "The same climb at 12 °C, with nothing near its limit.",
          Duration.ofMinutes(17),
          "Wattle 2",
          "wattle-2.json",
          Rig.usual(),
          new Course.OnRoad(
              KESTREL_RANGE,
              new Weather(12, 1.5, 1),
              TOWING_SPEEDS,
              new WarmStart(24, 86, 90, 66, 0)));

  private static final Scenario DYNO_PULL =
      new Scenario(
          "dyno-pull",
          "A smaller engine pulls on a dynamometer until its charge air is too hot.",
          Duration.ofSeconds(200),
          "Wattle 1",
          "wattle-1.json",
          dynoRig(),
          new Course.OnDynamometer(
              30,
              60,
              4,
              25,
              9.5,
              List.of(
                  new Course.Wish(0, 150),
                  new Course.Wish(20, 300),
                  new Course.Wish(37, 390),
                  new Course.Wish(150, 40)),
              new WarmStart(70, 74, 80, 70, 25)));

  private Scenarios() {}

  /** All of them, in the order in which they are listed. */
  public static List<Scenario> all() {
    return List.of(LONG_HOT_GRADE, COOL_DAY, DYNO_PULL);
  }

  private static Rig dynoRig() {
    return Rig.usual()
        .with(RigTrait.DISPLACEMENT_L, 3.2)
        .with(RigTrait.PEAK_TORQUE_NM, 425)
        .with(RigTrait.REFERENCE_TORQUE_NM, 520)
        .with(RigTrait.MASS_KG, 5600)
        .with(RigTrait.CHARGE_COOLER_W_PER_K, 600)
        .with(RigTrait.CHARGE_CIRCUIT_LITRES, 4.4)
        .with(RigTrait.CHARGE_CIRCUIT_METAL_J_PER_K, 1500)
        .with(RigTrait.CHARGE_PUMP_L_PER_MIN, 7)
        .with(RigTrait.CHARGE_RADIATOR_W_PER_K, 130)
        .with(RigTrait.AIR_FUEL_RATIO, 25)
        .with(RigTrait.COMPRESSOR_EFFICIENCY, 0.69)
        .with(RigTrait.ENGINE_HEAT_CAPACITY_J_PER_K, 200_000)
        .with(RigTrait.DERATE_CHARGE_AIR_DEGC, 108)
        .with(RigTrait.DERATE_CHARGE_COOLANT_DEGC, 105)
        .with(RigTrait.DERATE_SHARE_PER_K, 0.02);
  }
}
