package steadypull.vehicle.role;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a temperature sensor stands in, as far as its parameter of SAE J1979 service 01 tells. Where
 * in that medium it stands is what has to be found out.
 */
public enum Medium {
  /** Charge air and the air that becomes it. Of several that behave alike the first is taken. */
  AIR(
      "01.77.1 01.77.2 01.77.3 01.77.4 01.68.1 01.68.2 01.68.3 01.68.4 01.68.5 01.68.6 01.0F"
          + " 01.75.2 01.76.2 01.75.1 01.76.1"),
  /** Water of the engine, or of a charge cooler's circuit. */
  WATER("01.05 01.67.1 01.67.2"),
  /** Exhaust gas. */
  EXHAUST(
      "01.75.3 01.75.4 01.76.3 01.76.4 01.78.1 01.78.2 01.78.3 01.78.4 01.79.1 01.79.2 01.79.3"
          + " 01.79.4 01.98.1 01.98.2 01.98.3 01.98.4 01.99.1 01.99.2 01.99.3 01.99.4");

  private static final Map<String, Medium> BY_SIGNAL = bySignal();

  private final String signals;

  Medium(String signals) {
    this.signals = signals;
  }

  private static Map<String, Medium> bySignal() {
    Map<String, Medium> bySignal = new LinkedHashMap<>();
    for (Medium medium : values()) {
      medium.signals().forEach(key -> bySignal.put(key, medium));
    }
    return Collections.unmodifiableMap(bySignal);
  }

  /** Keys of the signals that may stand in this medium, the likelier first. */
  public List<String> signals() {
    return List.of(signals.split(" ", -1));
  }

  /** The medium of a signal; empty if its place is not in question. */
  public static Optional<Medium> of(String signalKey) {
    return Optional.ofNullable(BY_SIGNAL.get(signalKey));
  }

  /** Keys of all signals whose place is in question. */
  public static List<String> allSignals() {
    return List.copyOf(BY_SIGNAL.keySet());
  }
}
