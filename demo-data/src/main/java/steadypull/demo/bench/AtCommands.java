package steadypull.demo.bench;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/** The adapter's own commands. Takes a command without its first two letters, without blanks. */
final class AtCommands {
  static final String IDENTITY = "STEADYPULL BENCH v1.0";

  private static final String UNKNOWN = "?";

  private final VehicleBus bus;
  private final AdapterTraits traits;
  private final boolean isEchoStuck;
  private AdapterMode mode;

  AtCommands(VehicleBus bus, AdapterTraits traits, boolean isEchoStuck) {
    this.bus = bus;
    this.traits = traits;
    this.isEchoStuck = isEchoStuck;
    mode = new AdapterMode(bus.protocol());
  }

  AdapterMode mode() {
    return mode;
  }

  /** Everything back to the defaults. */
  void reset() {
    mode = new AdapterMode(bus.protocol());
  }

  /** The reply, without line ends. */
  String answer(String command, long nanos) {
    if (traits.refuses(command)) {
      return UNKNOWN;
    }
    return switch (command) {
      case "I" -> IDENTITY;
      case "@1" -> "BENCH ADAPTER OF AN INVENTED WORLD";
      case "RV" -> String.format(Locale.ROOT, "%.1fV", bus.supplyVolts(nanos));
      case "IGN" -> bus.isAwake(nanos) ? "ON" : "OFF";
      case "DP" -> mode.protocolName();
      case "DPN" -> mode.protocolNumber();
      default -> changed(command);
    };
  }

  private String changed(String command) {
    Optional<Runnable> change = switching(command).or(() -> setting(command));
    change.ifPresent(Runnable::run);
    return change.isPresent() ? "OK" : UNKNOWN;
  }

  /** Commands that are one word. */
  private Optional<Runnable> switching(String command) {
    boolean isOn = command.endsWith("1");
    return switch (command) {
      case "D" -> Optional.of(this::reset);
      case "PC" -> Optional.of(mode::disconnect);
      case "AR", "CRA" -> Optional.of(() -> mode.receiveOnly = OptionalInt.empty());
      case "E0", "E1" -> Optional.of(() -> mode.echo = isOn || isEchoStuck);
      case "L0", "L1" -> Optional.of(() -> mode.linefeeds = isOn);
      case "S0", "S1" -> Optional.of(() -> mode.spaces = isOn);
      case "H0", "H1" ->
          Optional.of(() -> mode.headers = isOn && !traits.has(AdapterTrait.SHAM_HEADERS));
      case "CAF0", "CAF1" -> Optional.of(() -> mode.formatting = isOn);
      case "CFC0", "CFC1" -> Optional.of(() -> mode.flowControl = isOn);
      case "AT0", "AT1", "AT2" ->
          Optional.of(() -> mode.adaptiveTiming = Character.digit(command.charAt(2), 10));
      case "AL", "NL", "M0", "M1", "R0", "R1", "LP" -> Optional.of(() -> {});
      default -> Optional.empty();
    };
  }

  /** Commands that carry a value. */
  private Optional<Runnable> setting(String command) {
    if (command.matches("ST[0-9A-F]{1,2}")) {
      return Optional.of(() -> mode.setTimeout(hex(command.substring(2))));
    }
    if (command.matches("SH[0-9A-F]{3}([0-9A-F]{3})?")) {
      return Optional.of(() -> mode.header = Optional.of(command.substring(2)));
    }
    if (command.matches("CRA([0-9A-F]{3}|[0-9A-F]{8})")) {
      return Optional.of(() -> mode.receiveOnly = OptionalInt.of(hex(command.substring(3))));
    }
    if (command.matches("(SP|TP)A?[0-9A-C]")) {
      return Optional.of(() -> mode.select(command.substring(2)));
    }
    return Optional.empty();
  }

  private static int hex(String digits) {
    return Integer.parseUnsignedInt(digits, 16);
  }
}
