package steadypull.compare;

import java.util.Arrays;
import java.util.List;

/**
 * Whether the engine's thermostat was fully open in the runs of a side. While it regulates, the
 * temperature is the thermostat's, and no radiator shows what it can do. Stateless.
 */
final class Opening {
  private static final int SECONDS = 20;

  private Opening() {}

  /** Whether a run of the side ended its load with the thermostat wide open. */
  static boolean isFull(List<RunLoad> loads, Side side, Fitted fitted) {
    double full = ThermostatCircuit.fullyOpenCelsius(fitted.own());
    return loads.stream()
        .filter(load -> load.run().side() == side)
        .anyMatch(
            load ->
                switch (load.run().start().thermostat()) {
                  case OPEN -> true;
                  case REGULATING -> false;
                  case UNKNOWN -> last(load) >= full;
                });
  }

  private static double last(RunLoad load) {
    double[] shown = load.shown();
    return Columns.mean(
        Arrays.copyOfRange(shown, Math.max(0, shown.length - SECONDS), shown.length));
  }
}
