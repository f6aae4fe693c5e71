package steadypull.demo.bench;

import java.util.Locale;
import java.util.OptionalInt;

/** The adapter's own commands. Takes a command without its first two letters, without blanks. */
final class AtCommands {
  static final String IDENTITY = "STEADYPULL BENCH v1.0";

  private static final String OK = "OK";
  private static final String NOT_UNDERSTOOD = "?";

  private final VehicleBus bus;
  private AdapterMode mode = new AdapterMode();
  private final boolean isEchoStuck;

  AtCommands(VehicleBus bus, boolean isEchoStuck) {
    this.bus = bus;
    this.isEchoStuck = isEchoStuck;
  }

  AdapterMode mode() {
    return mode;
  }

  /** Everything back to the defaults. */
  void reset() {
    mode = new AdapterMode();
  }

  /** The reply, without line ends. */
  String answer(String command, long nanos) {
    return switch (command) {
      case "D" -> {
        reset();
        yield OK;
      }
      case "I" -> IDENTITY;
      case "@1" -> "BENCH ADAPTER OF AN INVENTED WORLD";
      case "RV" -> bus.isAwake(nanos) ? "14.1V" : "12.4V";
      case "IGN" -> bus.isAwake(nanos) ? "ON" : "OFF";
      case "DP" -> mode.protocolName();
      case "DPN" -> mode.protocolNumber();
      case "PC" -> {
        mode.disconnect();
        yield OK;
      }
      case "AL", "NL", "M0", "M1", "R0", "R1", "LP" -> OK;
      case "AR", "CRA" -> {
        mode.receiveOnly = OptionalInt.empty();
        yield OK;
      }
      default -> switched(command);
    };
  }

  private String switched(String command) {
    return switch (command) {
      case "E0", "E1" -> {
        mode.echo = isOn(command) || isEchoStuck;
        yield OK;
      }
      case "L0", "L1" -> {
        mode.linefeeds = isOn(command);
        yield OK;
      }
      case "S0", "S1" -> {
        mode.spaces = isOn(command);
        yield OK;
      }
      case "H0", "H1" -> {
        mode.headers = isOn(command);
        yield OK;
      }
      case "CAF0", "CAF1" -> {
        mode.formatting = isOn(command);
        yield OK;
      }
      case "CFC0", "CFC1" -> {
        mode.flowControl = isOn(command);
        yield OK;
      }
      case "AT0", "AT1", "AT2" -> {
        mode.adaptiveTiming = command.charAt(2) - '0';
        yield OK;
      }
      default -> withValue(command);
    };
  }

  private String withValue(String command) {
    if (command.matches("ST[0-9A-F]{1,2}")) {
      mode.setTimeout(hex(command.substring(2)));
      return OK;
    }
    if (command.matches("SH[0-9A-F]{3}([0-9A-F]{3})?")) {
      mode.header = hex(command.substring(2));
      return OK;
    }
    if (command.matches("CRA[0-9A-F]{3}")) {
      mode.receiveOnly = OptionalInt.of(hex(command.substring(3)));
      return OK;
    }
    if (command.matches("(SP|TP)A?[0-9A-C]")) {
      return protocol(command.substring(2));
    }
    return NOT_UNDERSTOOD;
  }

  private String protocol(String wanted) {
    mode.disconnect();
    mode.isProtocolSearched = wanted.length() == 2 || wanted.equals("0");
    mode.protocol = wanted.charAt(wanted.length() - 1);
    return OK;
  }

  private static boolean isOn(String command) {
    return command.endsWith("1");
  }

  private static int hex(String digits) {
    return Integer.parseInt(digits.toUpperCase(Locale.ROOT), 16);
  }
}
