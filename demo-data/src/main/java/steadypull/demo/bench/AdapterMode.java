package steadypull.demo.bench;

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
  int header = VehicleBus.EVERYBODY;
  OptionalInt receiveOnly = OptionalInt.empty();
  char protocol = '0';
  boolean isProtocolSearched = true;
  boolean isConnected;

  private static final int DEFAULT_TIMEOUT_UNITS = 0x32; // 200 ms
  private static final long TIMEOUT_UNIT_NANOS = 4_096_000;
  private static final long[] ADAPTIVE_NANOS = {Long.MAX_VALUE, 34_000_000, 22_000_000};

  /** How long to wait for a first answer. */
  long patienceNanos() {
    return timeoutUnits * TIMEOUT_UNIT_NANOS;
  }

  /** How long to wait for a further answer. */
  long furtherNanos() {
    return Math.min(patienceNanos(), ADAPTIVE_NANOS[adaptiveTiming]);
  }

  void setTimeout(int units) {
    timeoutUnits = units == 0 ? DEFAULT_TIMEOUT_UNITS : units;
  }

  /** Whether this bench's vehicle could be heard over the protocol that was set. */
  boolean isRightProtocol() {
    return protocol == '6' || isProtocolSearched;
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
    String found = isConnected ? "6" : String.valueOf(protocol);
    return isProtocolSearched ? "A" + found : found;
  }

  String protocolName() {
    String name = isConnected || protocol == '6' ? "ISO 15765-4 (CAN 11/500)" : "";
    if (!isProtocolSearched) {
      return name.isEmpty() ? "PROTOCOL " + protocol : name;
    }
    return name.isEmpty() ? "AUTO" : "AUTO, " + name;
  }
}
