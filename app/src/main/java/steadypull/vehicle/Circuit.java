package steadypull.vehicle;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The parts of a vehicle's cooling that are changed apart from each other: fitting something to one
 * leaves what is known of the others.
 */
public enum Circuit {
  /** Charge cooler, its pipes, and its water circuit where it has one. */
  CHARGE_AIR("charge cooler's circuit"),
  /** Intake, turbocharger and what the engine breathes. */
  COMPRESSOR("turbocharger and intake"),
  ENGINE_COOLANT("engine's radiator and fan"),
  ENGINE_OIL("engine oil"),
  GEARBOX("gearbox fluid"),
  EXHAUST("exhaust");

  private final String title;

  Circuit(String title) {
    this.title = title;
  }

  /** The word used in files and commands, such as {@code charge-air}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** What people call it. */
  public String title() {
    return title;
  }

  /** The words of all, as messages list them. */
  public static String words() {
    return Stream.of(values()).map(Circuit::word).collect(Collectors.joining(", "));
  }

  /** The circuit of that word, or empty if there is none. */
  public static Optional<Circuit> of(String word) {
    return Stream.of(values()).filter(each -> each.word().equals(word)).findFirst();
  }
}
