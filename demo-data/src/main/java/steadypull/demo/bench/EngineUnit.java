package steadypull.demo.bench;

import static steadypull.demo.bench.Parameters.join;
import static steadypull.demo.bench.Parameters.number;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import steadypull.demo.plant.Sensor;

/** The engine's control unit, 7E0 / 7E8. */
final class EngineUnit implements ControlUnit {
  /** Made up, with a right check digit. */
  private static final String VIN = "1ZZTP9AG1R0000042";

  private static final byte[] ABSENT = {0, 0};

  private final BenchVehicle vehicle;
  private final Parameters parameters;

  EngineUnit(BenchVehicle vehicle) {
    this.vehicle = vehicle;
    parameters =
        new Parameters(
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

  @Override
  public int requestAddress() {
    return 0x7E0;
  }

  @Override
  public Optional<byte[]> answer(byte[] request, boolean isFunctional) {
    int service = request[0] & 0xFF;
    return switch (service) {
      case 0x01 -> Services.currentData(parameters, request, isFunctional);
      case 0x03, 0x07, 0x0A -> Services.noTroubleCodes(service);
      case 0x09 -> information(request, isFunctional);
      case 0x22 -> identifier(request, isFunctional);
      default -> Services.refusal(service, Services.SERVICE_NOT_SUPPORTED, isFunctional);
    };
  }

  /** Service 09: support map and vehicle identification number. */
  private Optional<byte[]> information(byte[] request, boolean isFunctional) {
    int type = request.length == 2 ? request[1] & 0xFF : -1;
    return switch (type) {
      case 0x00 -> Optional.of(new byte[] {0x49, 0x00, 0x40, 0, 0, 0});
      case 0x02 -> Optional.of(join(new byte[] {0x49, 0x02, 0x01}, vin()));
      default -> Services.refusal(0x09, Services.SUB_FUNCTION_NOT_SUPPORTED, isFunctional);
    };
  }

  /** Service 22: the vehicle identification number, ISO 14229-1 annex C. */
  private Optional<byte[]> identifier(byte[] request, boolean isFunctional) {
    if (request.length == 3 && (request[1] & 0xFF) == 0xF1 && (request[2] & 0xFF) == 0x90) {
      return Optional.of(join(new byte[] {0x62, (byte) 0xF1, (byte) 0x90}, vin()));
    }
    return Services.refusal(0x22, Services.REQUEST_OUT_OF_RANGE, isFunctional);
  }

  private static byte[] vin() {
    return VIN.getBytes(StandardCharsets.US_ASCII);
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
