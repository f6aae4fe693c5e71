package steadypull.demo.bench;

import java.util.Arrays;
import java.util.List;

/**
 * Sends hex lines to the vehicle and prints what comes back, each line at the moment its frame was
 * heard, up to the line end of the last one.
 */
final class BusRequests {
  private static final long SEARCH_NANOS = 1_300_000_000L;
  private static final long GIVE_UP_NANOS = 4_500_000_000L;
  private static final long SEND_NANOS = 300_000; // one frame at 500 kbit/s
  private static final long EXTENDED_NANOS = 5_000_000_000L; // P2*, ISO 15765-4

  private final VehicleBus bus;
  private final Outlet outlet;

  BusRequests(VehicleBus bus, Outlet outlet) {
    this.bus = bus;
    this.outlet = outlet;
  }

  /** Performs one line without blanks, in upper case. */
  void perform(String command, AdapterMode mode, long nanos) {
    String end = mode.linefeeds ? "\r\n" : "\r";
    if (!isRequest(command, mode)) {
      outlet.print("?" + end, nanos);
    } else if (!mode.isRightProtocol()) {
      refuse(mode, end, nanos);
    } else if (mode.isConnected || !mode.isProtocolSearched) {
      send(command, mode, end, nanos);
    } else {
      search(command, mode, end, nanos);
    }
  }

  private static boolean isRequest(String command, AdapterMode mode) {
    int longest = mode.formatting ? 7 : 8;
    return command.matches("[0-9A-F]+") && command.length() >= 2 && command.length() / 2 <= longest;
  }

  private void refuse(AdapterMode mode, String end, long nanos) {
    String text =
        switch (mode.protocol) {
          case '3', '4', '5' -> "BUS INIT: ...ERROR";
          case '1', '2' -> "UNABLE TO CONNECT";
          default -> "CAN ERROR";
        };
    outlet.print(text + end, nanos + mode.patienceNanos());
  }

  private void search(String command, AdapterMode mode, String end, long nanos) {
    outlet.print("SEARCHING...", nanos);
    if (bus.isAwake(nanos + SEARCH_NANOS)) {
      outlet.print(end, nanos + SEARCH_NANOS);
      send(command, mode, end, nanos + SEARCH_NANOS);
    } else {
      outlet.print(end + "UNABLE TO CONNECT" + end, nanos + GIVE_UP_NANOS);
    }
  }

  private void send(String command, AdapterMode mode, String end, long nanos) {
    byte[] payload = payload(bytes(command), mode);
    List<Frame> frames =
        bus.request(mode.header, payload, nanos + SEND_NANOS).stream()
            .filter(frame -> isHeard(frame, mode))
            .toList();
    int wantedLines = wantedLines(command);
    FrameText text = new FrameText(mode);
    long deadline = nanos + mode.patienceNanos();
    int lines = 0;
    for (Frame frame : frames) {
      if (frame.nanos() > deadline || lines == wantedLines) {
        break;
      }
      outlet.print(text.of(frame, end) + end, frame.nanos());
      lines++;
      deadline = frame.nanos() + (isPending(frame) ? EXTENDED_NANOS : mode.furtherNanos());
    }
    finish(mode, end, lines, lines == wantedLines ? nanos : deadline);
  }

  /** An odd last digit says after how many lines to stop. */
  private static int wantedLines(String command) {
    return command.length() % 2 == 0
        ? Integer.MAX_VALUE
        : Math.max(1, Character.digit(command.charAt(command.length() - 1), 16));
  }

  private void finish(AdapterMode mode, String end, int lines, long nanos) {
    if (lines == 0) {
      outlet.print("NO DATA" + end, nanos);
    } else {
      mode.isConnected = true;
      outlet.print("", nanos);
    }
  }

  private static boolean isHeard(Frame frame, AdapterMode mode) {
    boolean isWanted =
        mode.receiveOnly.isEmpty() || mode.receiveOnly.getAsInt() == frame.identifier();
    return isWanted && (mode.flowControl || !frame.isConsecutive());
  }

  private static boolean isPending(Frame frame) {
    byte[] data = frame.data();
    return data[0] == 3 && data[1] == 0x7F && data[3] == Services.RESPONSE_PENDING;
  }

  /** Without formatting the line carries its own length byte. */
  private static byte[] payload(byte[] bytes, AdapterMode mode) {
    if (mode.formatting) {
      return bytes;
    }
    int length = bytes[0] & 0xFF;
    boolean isSingle = length >= 1 && length < bytes.length;
    return isSingle ? Arrays.copyOfRange(bytes, 1, 1 + length) : new byte[0];
  }

  private static byte[] bytes(String hex) {
    byte[] bytes = new byte[hex.length() / 2];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) Integer.parseInt(hex.substring(2 * i, 2 * i + 2), 16);
    }
    return bytes;
  }
}
