package steadypull.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;

/**
 * Tables of pulls on rollers in a world whose charge coolant is one heat store: {@code C dT/dt = Q
 * - UA (T - outside)}, with the heat that the charge air gives to it.
 */
final class InventedPulls {
  private static final int ONSET = 180;
  private static final int END = 780;
  private static final double GRAMS_PER_SECOND = 90;
  private static final double CP = 1.006; // J/(g.K), dry air, from memory
  private static final double AIR_IN = 150;
  private static final double SENSOR_LAG_SECONDS = 4;
  private static final double IDLE_GRAMS = 14;
  private static final double IDLE_AIR_IN = 45;

  private InventedPulls() {}

  /**
   * Writes one table.
   *
   * @param joules heat capacity C, J/K
   * @param watts conductance UA, W/K
   * @param outside degC
   */
  static Path write(Path file, double joules, double watts, double outside, int seed)
      throws IOException {
    Random noise = new Random(seed);
    StringBuilder table =
        new StringBuilder(
            "time[s],vehicle_speed[km/h],engine_speed[r/min],wheel_power[kW],ambient_air_temp[degC],barometric_pressure[kPa],air_mass_flow[g/s],charge_air_temp_in[degC],charge_air_temp_out[degC],charge_coolant_temp[degC]\n");
    double coolant = outside + 6;
    double sensor = coolant;
    for (int second = 0; second < END + 120; second++) {
      boolean pulls = second >= ONSET && second < END;
      double air = pulls ? GRAMS_PER_SECOND : IDLE_GRAMS;
      double in = pulls ? AIR_IN : IDLE_AIR_IN;
      double out = coolant + 0.12 * (in - coolant);
      double heat = air * CP * (in - out);
      coolant += (heat - watts * (coolant - outside)) / joules;
      sensor += (coolant - sensor) / SENSOR_LAG_SECONDS;
      table.append(
          String.format(
              Locale.ROOT,
              "%d,%d,%d,%.1f,%.1f,%.1f,%.1f,%.1f,%.1f,%.0f%n",
              second,
              pulls ? 80 : 0,
              pulls ? 2600 : 750,
              pulls ? 90 + noise.nextGaussian() * 0.4 : 0,
              outside,
              98.5,
              air * (1 + noise.nextGaussian() * 0.005),
              in + noise.nextGaussian() * 0.3,
              out + noise.nextGaussian() * 0.3,
              sensor));
    }
    return Files.writeString(file, table.toString());
  }
}
