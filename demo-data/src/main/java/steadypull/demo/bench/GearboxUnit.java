package steadypull.demo.bench;

import static steadypull.demo.bench.Parameters.join;
import static steadypull.demo.bench.Parameters.number;

import java.util.Map;
import java.util.Optional;
import steadypull.demo.plant.Sensor;

/** The gearbox's control unit, 7E1 / 7E9. Answers some requests that go to everybody, too. */
final class GearboxUnit implements ControlUnit {
  /** Invented identifier of the fluid's temperature: 1/16 degC per bit from -40 degC on. */
  private static final int FLUID_TEMPERATURE = 0x1E1C;

  private final BenchVehicle vehicle;
  private final Parameters parameters;

  GearboxUnit(BenchVehicle vehicle) {
    this.vehicle = vehicle;
    parameters =
        new Parameters(
            Map.of(
                0x0D, () -> number(vehicle.read(Sensor.VEHICLE_SPEED), 1),
                0x42, () -> number(vehicle.read(Sensor.SUPPLY_VOLTAGE) * 1000, 2),
                0xA4, this::gear));
  }

  @Override
  public int requestAddress() {
    return 0x7E1;
  }

  @Override
  public Optional<byte[]> answer(byte[] request, boolean isFunctional) {
    int service = request[0] & 0xFF;
    return switch (service) {
      case 0x01 -> Services.currentData(parameters, request, isFunctional);
      case 0x03, 0x07, 0x0A -> Services.noTroubleCodes(service);
      case 0x22 -> identifier(request, isFunctional);
      default -> Services.refusal(service, Services.SERVICE_NOT_SUPPORTED, isFunctional);
    };
  }

  private Optional<byte[]> identifier(byte[] request, boolean isFunctional) {
    if (request.length != 3) {
      return Services.refusal(0x22, Services.INCORRECT_LENGTH, isFunctional);
    }
    int identifier = (request[1] & 0xFF) << 8 | (request[2] & 0xFF);
    if (identifier != FLUID_TEMPERATURE) {
      return Services.refusal(0x22, Services.REQUEST_OUT_OF_RANGE, isFunctional);
    }
    byte[] raw = number((vehicle.read(Sensor.GEARBOX_FLUID) + 40) * 16, 2);
    return Optional.of(join(new byte[] {0x62}, number(identifier, 2), raw));
  }

  private byte[] gear() {
    byte gear = (byte) ((int) Math.round(vehicle.read(Sensor.GEAR)) << 4);
    return join(new byte[] {0x03, gear}, number(vehicle.gearRatio() * 1000, 2));
  }
}
