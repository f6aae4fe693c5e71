package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import steadypull.adapter.Reading;
import steadypull.demo.DemoWorld;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Drive;

/** Compares what was read with what the sensors said, for quantities that change slowly. */
final class TrueReadings {
  static final Map<String, Sensor> SLOW_SENSORS =
      Map.of(
          "01.05", Sensor.ENGINE_COOLANT,
          "01.0F", Sensor.INTAKE_AIR,
          "01.33", Sensor.BAROMETER,
          "01.46", Sensor.OUTSIDE_AIR,
          "01.5C", Sensor.ENGINE_OIL,
          "01.63", Sensor.REFERENCE_TORQUE,
          "01.67.2", Sensor.CHARGE_COOLANT,
          "01.75.2", Sensor.CHARGE_AIR_IN,
          "01.77.1", Sensor.CHARGE_AIR_OUT,
          "22.1E1C.0", Sensor.GEARBOX_FLUID);

  private TrueReadings() {}

  /**
   * Compares at the time stamps: a step of the sensor and its noise apart.
   *
   * @return how many readings were compared
   */
  static int compare(List<Reading> readings, String scenario, long seed, double startSeconds) {
    Drive drive = new Drive(DemoWorld.scenario(scenario).orElseThrow(), seed);
    int compared = 0;
    for (Reading reading : readings) {
      Sensor sensor = SLOW_SENSORS.get(reading.signal().key());
      if (sensor != null) {
        drive.advanceTo(startSeconds + reading.nanoTime() / 1e9);
        assertThat(reading.value())
            .as("%s at %d", reading.signal(), reading.nanoTime())
            .isCloseTo(drive.read(sensor), within(2.5));
        compared++;
      }
    }
    return compared;
  }
}
