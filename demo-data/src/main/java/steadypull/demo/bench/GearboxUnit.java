package steadypull.demo.bench;

import static steadypull.demo.bench.Parameters.join;
import static steadypull.demo.bench.Parameters.number;

import java.util.List;
import java.util.Map;
import steadypull.demo.plant.Sensor;

/** The gearbox's control unit, 7E1 / 7E9. Answers some requests that go to everybody, too. */
final class GearboxUnit {
  /** Invented identifier of the fluid's temperature: 1/16 degC per bit from -40 degC on. */
  private static final int FLUID_TEMPERATURE = 0x1E1C;

  private final BenchVehicle vehicle;

  private GearboxUnit(BenchVehicle vehicle) {
    this.vehicle = vehicle;
  }

  static ControlUnit of(BenchVehicle vehicle) {
    GearboxUnit unit = new GearboxUnit(vehicle);
    return new ControlUnit(
        0x18,
        0x7E1,
        vehicle.fitted(unit.parameters()),
        new Information(
            Map.of(
                Information.CALIBRATION, List.of(Information.text("WTL2-GBX-0007", 16)),
                Information.CALIBRATION_CHECK, List.of(new byte[] {0x0F, 0x1E, 0x2D, 0x3C}),
                Information.NAME, List.of(Information.text("TCM\0-TransmisCtrl", 20)))),
        Map.of(FLUID_TEMPERATURE, unit::fluid),
        1,
        new TroubleMemory(vehicle.codes(true)));
  }

  private Parameters parameters() {
    return new Parameters(
        Map.of(
            0x0D, () -> number(vehicle.read(Sensor.VEHICLE_SPEED), 1),
            0x42, () -> number(vehicle.read(Sensor.SUPPLY_VOLTAGE) * 1000, 2),
            0xA4, this::gear));
  }

  private byte[] fluid() {
    return number((vehicle.read(Sensor.GEARBOX_FLUID) + 40) * 16, 2);
  }

  private byte[] gear() {
    byte gear = (byte) ((int) Math.round(vehicle.read(Sensor.GEAR)) << 4);
    return join(new byte[] {0x03, gear}, number(vehicle.gearRatio() * 1000, 2));
  }
}
