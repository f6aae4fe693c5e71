package steadypull.demo.season;

import java.util.ArrayList;
import java.util.List;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.Sensor;

/**
 * What one request brings: its values arrive together. The formulas are those of SAE J1979 as the
 * open signal set gives them; parameters in comments. Immutable.
 *
 * @param periodMicros between two requests
 * @param lines of the answer, each takes its time on the wire
 * @param values one or more, in the order of the answer
 */
record PolledAnswer(long periodMicros, int lines, List<BusValue> values) {
  private static final long FAST = 250_000;
  private static final long MEDIUM = 1_000_000;
  private static final long SLOW = 10_000_000;

  PolledAnswer {
    values = List.copyOf(values);
  }

  /** Parameters packed as the fast, medium and slow classes allow. */
  static List<PolledAnswer> ofCan(Rig.Cooling cooling) {
    List<PolledAnswer> answers = new ArrayList<>();
    answers.add(
        of(
            FAST,
            3,
            BusValue.percent(Sensor.ENGINE_LOAD), // 04
            BusValue.two(Sensor.ENGINE_SPEED, "r/min", 1.0 / 4), // 0C
            BusValue.one(Sensor.VEHICLE_SPEED, "km/h"), // 0D
            BusValue.percent(Sensor.PEDAL), // 49
            BusValue.torque(Sensor.DEMANDED_TORQUE), // 61
            BusValue.torque(Sensor.DELIVERED_TORQUE))); // 62
    answers.add(of(FAST, 1, BusValue.two(Sensor.MANIFOLD_PRESSURE, "kPa", 1.0 / 32))); // 87
    answers.add(
        of(
            MEDIUM,
            2,
            BusValue.celsius(Sensor.ENGINE_COOLANT), // 05
            BusValue.celsius(Sensor.INTAKE_AIR), // 0F
            BusValue.two(Sensor.AIR_FLOW, "g/s", 1.0 / 100), // 10
            BusValue.celsius(Sensor.ENGINE_OIL), // 5C
            BusValue.two(Sensor.FUEL_RATE, "L/h", 1.0 / 20))); // 5E
    answers.add(chargeAir(cooling));
    answers.add(
        of(
            MEDIUM,
            2,
            BusValue.exhaust(Sensor.EXHAUST_BEFORE_TURBINE), // 78
            BusValue.exhaust(Sensor.EXHAUST_AFTER_TURBINE)));
    answers.add(of(MEDIUM, 1, BusValue.one(Sensor.GEAR, "1"))); // A4, the gearbox's control unit
    answers.add(of(MEDIUM, 1, gearboxFluid()));
    answers.add(
        of(
            SLOW,
            2,
            BusValue.one(Sensor.BAROMETER, "kPa"), // 33
            BusValue.two(Sensor.SUPPLY_VOLTAGE, "V", 1.0 / 1000), // 42
            BusValue.celsius(Sensor.OUTSIDE_AIR), // 46
            BusValue.two(Sensor.REFERENCE_TORQUE, "N.m", 1))); // 63
    return List.copyOf(answers);
  }

  /** 67, 75 and 77 together; there is no second coolant sensor without a second coolant. */
  private static PolledAnswer chargeAir(Rig.Cooling cooling) {
    BusValue in = BusValue.celsius(Sensor.CHARGE_AIR_IN);
    BusValue out = BusValue.celsius(Sensor.CHARGE_AIR_OUT);
    return switch (cooling) {
      case WATER_TO_AIR -> of(MEDIUM, 3, BusValue.celsius(Sensor.CHARGE_COOLANT), in, out);
      case AIR_TO_AIR -> of(MEDIUM, 3, in, out);
    };
  }

  /** The vehicle's own identifier 1E1C: sixteenths from -40 on. */
  private static BusValue gearboxFluid() {
    return new BusValue(
        Sensor.GEARBOX_FLUID.channel() + "[degC]", Sensor.GEARBOX_FLUID, 0.0625, -40, 0xFFFF);
  }

  /** One parameter in each answer, none newer than the line itself. */
  static List<PolledAnswer> ofKeyLine() {
    return List.of(
        of(FAST, 1, BusValue.percent(Sensor.ENGINE_LOAD)), // 04
        of(FAST, 1, BusValue.one(Sensor.MANIFOLD_PRESSURE, "kPa")), // 0B
        of(FAST, 1, BusValue.two(Sensor.ENGINE_SPEED, "r/min", 1.0 / 4)), // 0C
        of(FAST, 1, BusValue.one(Sensor.VEHICLE_SPEED, "km/h")), // 0D
        of(MEDIUM, 1, BusValue.celsius(Sensor.ENGINE_COOLANT)), // 05
        of(MEDIUM, 1, BusValue.celsius(Sensor.INTAKE_AIR)), // 0F
        of(MEDIUM, 1, BusValue.two(Sensor.AIR_FLOW, "g/s", 1.0 / 100)), // 10
        of(SLOW, 1, BusValue.one(Sensor.BAROMETER, "kPa"))); // 33
  }

  private static PolledAnswer of(long periodMicros, int lines, BusValue... values) {
    return new PolledAnswer(periodMicros, lines, List.of(values));
  }
}
