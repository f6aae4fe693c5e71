package steadypull.demo.bench;

import java.util.Optional;
import java.util.OptionalInt;

/** What the adapter has been told: switches, times, header, protocol. Defaults as after a reset. */
final class AdapterMode {
  boolean echo = true;
  boolean linefeeds;
  boolean spaces = true;
  boolean headers;
  boolean formatting = true;
  boolean flowControl = true;
  int adaptiveTiming = 1;
  int timeoutUnits = DEFAULT_TIMEOUT_UNITS;

  /** Hex digits of the header that was set: 3, or the last 6. */
  Optional<String> header = Optional.empty();

  OptionalInt receiveOnly = OptionalInt.empty();
  char protocol = '0';
  boolean isProtocolSearched = true;
  boolean isConnected;

  private static final int DEFAULT_TIMEOUT_UNITS = 0x32; // 200 ms
  private static final long TIMEOUT_UNIT_NANOS = 4_096_000;
  private static final long[] ADAPTIVE_NANOS = {Long.MAX_VALUE, 34_000_000, 22_000_000};

  /** Control units before CAN leave 25 to 50 ms between their messages. */
  private static final long LEAST_BETWEEN_MESSAGES_NANOS = 85_000_000;

  private final BusProtocol vehicles;

  AdapterMode(BusProtocol vehicles) {
    this.vehicles = vehicles;
  }

  /** How long to wait for a first answer. */
  long patienceNanos() {
    return timeoutUnits * TIMEOUT_UNIT_NANOS;
  }

  /** How long to wait for a further answer. */
  long furtherNanos() {
    long adaptive = ADAPTIVE_NANOS[adaptiveTiming];
    long least = vehicles.isCan() ? adaptive : Math.max(adaptive, LEAST_BETWEEN_MESSAGES_NANOS);
    return Math.min(patienceNanos(), least);
  }

  void setTimeout(int units) {
    timeoutUnits = units == 0 ? DEFAULT_TIMEOUT_UNITS : units;
  }

  /** The header for a bus before CAN, in hex digits; none if it was not set. */
  String olderHeader() {
    return header.filter(digits -> digits.length() == 6).orElse("");
  }

  /** Whether this bench's vehicle could be heard over the protocol that was set. */
  boolean isRightProtocol() {
    return protocol == vehicles.number() || isProtocolSearched;
  }

  /** Takes a protocol: its number, searched for if it is 0 or has an A before it. */
  void select(String wanted) {
    disconnect();
    isProtocolSearched = wanted.length() == 2 || wanted.equals("0");
    protocol = wanted.charAt(wanted.length() - 1);
  }

  void disconnect() {
    isConnected = false;
  }

  String protocolNumber() {
    char found = isConnected ? vehicles.number() : protocol;
    return isProtocolSearched ? "A" + found : String.valueOf(found);
  }

  String protocolName() {
    if (isProtocolSearched) {
      return isConnected ? "AUTO, " + vehicles.words() : "AUTO";
    }
    return Character.isDigit(protocol) && protocol != '0'
        ? BusProtocol.of(String.valueOf(protocol)).words()
        : "PROTOCOL " + protocol;
  }
}
