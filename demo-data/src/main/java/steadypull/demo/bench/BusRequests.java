package steadypull.demo.bench;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;

/**
 * Sends hex lines to the vehicle: looks for the protocol or begins a session where that is needed,
 * says so piece by piece, and prints what comes back.
 */
final class BusRequests {
  private static final long PIECE_NANOS = 180_000_000;
  private static final long FAULT_NANOS = 20_000_000;
  private static final long FIVE_BAUD_START_NANOS = 2_500_000_000L;
  private static final long FAST_START_NANOS = 130_000_000;
  private static final double NANOS = 1e9;

  private final VehicleBus bus;
  private final BenchSettings settings;
  private final Outlet outlet;
  private final ReplyPrinter printer;

  BusRequests(VehicleBus bus, BenchSettings settings, Outlet outlet) {
    this.bus = bus;
    this.settings = settings;
    this.outlet = outlet;
    printer = new ReplyPrinter(settings, outlet);
  }

  /** Performs one line without blanks, in upper case, up to the line end of the last answer. */
  void perform(String command, AdapterMode mode, long nanos) {
    String end = mode.linefeeds ? "\r\n" : "\r";
    Optional<String> fault = fault(nanos / NANOS);
    if (!isRequest(command, mode)) {
      outlet.print("?" + end, nanos);
    } else if (fault.isPresent()) {
      outlet.print(fault.get() + end, nanos + FAULT_NANOS);
    } else if (!mode.isRightProtocol()) {
      outlet.print(refusal(mode.protocol) + end, nanos + mode.patienceNanos());
    } else if (mode.isConnected || !mode.isProtocolSearched) {
      begin(command, mode, end, nanos);
    } else {
      search(command, mode, end, nanos);
    }
  }

  private boolean isRequest(String command, AdapterMode mode) {
    int longest = mode.formatting ? 7 : 8;
    boolean isCounted = command.length() % 2 == 1;
    return command.matches("[0-9A-F]+")
        && command.length() >= 2
        && command.length() / 2 <= longest
        && !(isCounted && settings.adapter().has(AdapterTrait.NO_COUNTS));
  }

  private Optional<String> fault(double seconds) {
    for (Fault.Kind kind : Fault.Kind.values()) {
      Optional<String> text = words(kind);
      if (text.isPresent() && settings.has(kind, seconds)) {
        return text;
      }
    }
    return Optional.empty();
  }

  private static Optional<String> words(Fault.Kind kind) {
    return switch (kind) {
      case CAN_ERROR, BUS_ERROR, BUS_BUSY, FB_ERROR, DATA_ERROR, STOPPED ->
          Optional.of(kind.name().replace('_', ' '));
      default -> Optional.empty();
    };
  }

  /** What an adapter says where the vehicle's bus is of another kind than it was told. */
  private String refusal(char protocol) {
    boolean isCan = protocol >= BusProtocol.CAN_11_500.number();
    boolean isSameRate =
        isCan
            && bus.protocol().isCan()
            && BusProtocol.of(String.valueOf(protocol)).bitsPerSecond()
                == bus.protocol().bitsPerSecond();
    if (isSameRate) {
      return "NO DATA";
    }
    boolean isKLine = protocol >= BusProtocol.ISO_9141.number();
    return isCan ? "CAN ERROR" : isKLine ? "BUS INIT: ...ERROR" : "UNABLE TO CONNECT";
  }

  private void search(String command, AdapterMode mode, String end, long nanos) {
    outlet.print("SEARCH", nanos);
    outlet.print("ING.", nanos + PIECE_NANOS);
    outlet.print("..", nanos + 2 * PIECE_NANOS);
    long found = nanos + ProtocolSearch.untilFound(bus.protocol(), mode.protocol);
    if (bus.isFound(found)) {
      mode.isConnected = true;
      bus.older().begin(found);
      outlet.print(end, found);
      send(command, mode, end, found);
    } else {
      outlet.print(end + "UNABLE TO CONNECT" + end, nanos + ProtocolSearch.untilGivenUp());
    }
  }

  /** On the K-line a session comes first. */
  private void begin(String command, AdapterMode mode, String end, long nanos) {
    if (!mode.isConnected) {
      bus.older().end();
    }
    if (bus.older().isReady(nanos)) {
      send(command, mode, end, nanos);
      return;
    }
    boolean isFast = bus.protocol() == BusProtocol.ISO_14230_FAST;
    long begun = nanos + (isFast ? FAST_START_NANOS : FIVE_BAUD_START_NANOS);
    outlet.print("BUS INIT: ", nanos);
    outlet.print(isFast ? "" : "...", nanos + PIECE_NANOS);
    boolean isAwake = bus.isAwake(begun);
    outlet.print((isAwake ? "OK" : "ERROR") + end, begun);
    if (isAwake) {
      mode.isConnected = true;
      bus.older().begin(begun);
      send(command, mode, end, begun);
    }
  }

  private void send(String command, AdapterMode mode, String end, long nanos) {
    byte[] payload = payload(bytes(command), mode);
    FrameText text = new FrameText(mode, bus.protocol().isLong());
    ReplyPrinter.Form form = new ReplyPrinter.Form(mode, text, end, wantedLines(command));
    boolean isAnswered = printer.print(bus.exchange(mode, payload, nanos), form, bus.sentNanos());
    mode.isConnected |= isAnswered;
  }

  /** An odd last digit says after how many lines to stop. */
  private static int wantedLines(String command) {
    return command.length() % 2 == 0
        ? Integer.MAX_VALUE
        : Math.max(1, Character.digit(command.charAt(command.length() - 1), 16));
  }

  /** Without formatting a line for CAN carries its own length byte. */
  private byte[] payload(byte[] bytes, AdapterMode mode) {
    if (mode.formatting || !bus.protocol().isCan()) {
      return bytes;
    }
    int length = bytes[0] & 0xFF;
    boolean isSingle = length >= 1 && length < bytes.length;
    return isSingle ? Arrays.copyOfRange(bytes, 1, 1 + length) : new byte[0];
  }

  private static byte[] bytes(String hex) {
    return HexFormat.of().parseHex(hex, 0, hex.length() / 2 * 2);
  }
}
