package steadypull.demo.bench;

import static steadypull.demo.bench.Parameters.join;
import static steadypull.demo.bench.Parameters.number;

import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import steadypull.demo.plant.Sensor;

/** The engine's control unit, 7E0 / 7E8. */
final class EngineUnit {
  /** Made up, with a right check digit. */
  private static final String VIN = "1ZZTP9AG1R0000042";

  private static final byte[] ABSENT = {0, 0};

  private static final int VIN_IDENTIFIER = 0xF190; // ISO 14229-1, annex C

  private final BenchVehicle vehicle;

  private EngineUnit(BenchVehicle vehicle) {
    this.vehicle = vehicle;
  }

  static ControlUnit of(BenchVehicle vehicle) {
    return new ControlUnit(
        0x10,
        0x7E0,
        vehicle.fitted(new EngineUnit(vehicle).parameters()),
        new Information(
            Map.of(
                Information.VIN, List.of(Information.text(VIN, 17)),
                Information.CALIBRATION,
                    List.of(
                        Information.text("WTL2-ENG-0042", 16), Information.text("BOOST-07", 16)),
                Information.CALIBRATION_CHECK,
                    List.of(new byte[] {0x1D, 0x2C, 0x3B, 0x4A}, new byte[] {5, 6, 7, 8}),
                Information.NAME, List.of(Information.text("ECM\0-EngineControl", 20)))),
        Map.of(VIN_IDENTIFIER, () -> Information.text(VIN, 17)),
        3,
        new TroubleMemory(vehicle.codes(false)));
  }

  private Parameters parameters() {
    return new Parameters(
        Map.ofEntries(
            one(0x04, Sensor.ENGINE_LOAD, 100.0 / 255, 0),
            one(0x05, Sensor.ENGINE_COOLANT, 1, -40),
            one(0x0B, Sensor.MANIFOLD_PRESSURE, 1, 0),
            two(0x0C, Sensor.ENGINE_SPEED, 0.25),
            one(0x0D, Sensor.VEHICLE_SPEED, 1, 0),
            one(0x0F, Sensor.INTAKE_AIR, 1, -40),
            two(0x10, Sensor.AIR_FLOW, 0.01),
            many(0x1F, () -> number(vehicle.runSeconds(), 2)),
            one(0x33, Sensor.BAROMETER, 1, 0),
            two(0x42, Sensor.SUPPLY_VOLTAGE, 0.001),
            one(0x46, Sensor.OUTSIDE_AIR, 1, -40),
            one(0x49, Sensor.PEDAL, 100.0 / 255, 0),
            one(0x5C, Sensor.ENGINE_OIL, 1, -40),
            two(0x5E, Sensor.FUEL_RATE, 0.05),
            one(0x61, Sensor.DEMANDED_TORQUE, 1, -125),
            one(0x62, Sensor.DELIVERED_TORQUE, 1, -125),
            two(0x63, Sensor.REFERENCE_TORQUE, 1),
            many(0x67, this::coolants),
            many(0x75, this::turbocharger),
            many(0x77, this::chargeCooler),
            many(0x78, this::exhaust),
            many(0x87, this::manifold),
            one(0x8E, Sensor.FRICTION_TORQUE, 1, -125)));
  }

  private byte[] coolants() {
    return join(new byte[] {0x03}, celsius(Sensor.ENGINE_COOLANT), celsius(Sensor.CHARGE_COOLANT));
  }

  private byte[] turbocharger() {
    return join(
        new byte[] {0x03},
        celsius(Sensor.INTAKE_AIR),
        celsius(Sensor.CHARGE_AIR_IN),
        ABSENT,
        ABSENT);
  }

  private byte[] chargeCooler() {
    return join(new byte[] {0x01}, celsius(Sensor.CHARGE_AIR_OUT), new byte[] {0, 0, 0});
  }

  private byte[] exhaust() {
    return join(
        new byte[] {0x03},
        tenths(Sensor.EXHAUST_BEFORE_TURBINE),
        tenths(Sensor.EXHAUST_AFTER_TURBINE),
        ABSENT,
        ABSENT);
  }

  private byte[] manifold() {
    return join(new byte[] {0x01}, number(read(Sensor.MANIFOLD_PRESSURE) * 32, 2), ABSENT);
  }

  private byte[] celsius(Sensor sensor) {
    return number(read(sensor) + 40, 1);
  }

  private byte[] tenths(Sensor sensor) {
    return number((read(sensor) + 40) * 10, 2);
  }

  private double read(Sensor sensor) {
    return vehicle.read(sensor);
  }

  private Map.Entry<Integer, Supplier<byte[]>> one(
      int parameter, Sensor sensor, double scale, double offset) {
    return Map.entry(parameter, () -> number((read(sensor) - offset) / scale, 1));
  }

  private Map.Entry<Integer, Supplier<byte[]>> two(int parameter, Sensor sensor, double scale) {
    return Map.entry(parameter, () -> number(read(sensor) / scale, 2));
  }

  private static Map.Entry<Integer, Supplier<byte[]>> many(int parameter, Supplier<byte[]> bytes) {
    return Map.entry(parameter, bytes);
  }
}
