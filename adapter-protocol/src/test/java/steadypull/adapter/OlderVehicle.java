package steadypull.adapter;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;

/**
 * Control units on a bus before CAN, as an adapter prints them with headers on: three header bytes,
 * data, one check byte. Written from the reference examples, not from the reader.
 */
final class OlderVehicle extends ScriptedVehicle {
  private static final double SESSION_SECONDS = 5;

  /** The buses with the adapters' numbers for them. */
  enum Bus {
    J1850_PULSE("1", "416B", false),
    J1850_VARIABLE("2", "486B", false),
    ISO_9141("3", "486B", true),
    ISO_14230_SLOW("4", "", true),
    ISO_14230_FAST("5", "", true);

    final String protocolNumber;
    final boolean hasSessions;
    private final String header;

    Bus(String protocolNumber, String header, boolean hasSessions) {
      this.protocolNumber = protocolNumber;
      this.header = header;
      this.hasSessions = hasSessions;
    }

    String line(String unit, String payload) {
      String before = header.isEmpty() ? "%02XF1".formatted(0x80 + payload.length() / 2) : header;
      String bytes = before + unit + payload;
      return bytes + check(bytes) + "\r";
    }

    String check(String hex) {
      byte[] bytes = HexFormat.of().parseHex(hex);
      return "%02X".formatted(hasSessions ? sum(bytes) : cyclic(bytes));
    }

    private static int sum(byte[] bytes) {
      int sum = 0;
      for (byte one : bytes) {
        sum += one & 0xFF;
      }
      return sum % 256;
    }

    /** Polynomial 1D, start FF, inverted. */
    private static int cyclic(byte[] bytes) {
      int rest = 0xFF;
      for (byte one : bytes) {
        for (int bit = 7; bit >= 0; bit--) {
          int top = ((rest >> 7) ^ (one >> bit)) & 1;
          rest = (rest << 1) & 0xFF;
          rest ^= top == 1 ? 0x1D : 0;
        }
      }
      return rest ^ 0xFF;
    }
  }

  private final Bus bus;
  ManualClock clock = new ManualClock();
  int sessions;
  private double lastRequestSeconds = Double.NEGATIVE_INFINITY;
  private final List<Double> requestSeconds = new ArrayList<>();

  OlderVehicle(Bus bus) {
    this.bus = bus;
    parameter("10", 0x05, "82").parameter("10", 0x0C, "1F40").parameter("10", 0x0D, "50");
    parameter("10", 0x33, "55").parameter("10", 0x46, "4B");
    parameter("18", 0x0D, "51");
  }

  /** When a request reached the bus, seconds. */
  List<Double> requestSeconds() {
    return requestSeconds;
  }

  @Override
  String answer(String request) {
    if (!isAwake) {
      return bus.hasSessions ? "BUS INIT: ...ERROR\r" : "NO DATA\r";
    }
    String progress = progress();
    StringBuilder lines = new StringBuilder();
    units.forEach(
        (unit, data) ->
            payloads(unit, data, request).forEach(payload -> lines.append(line(unit, payload))));
    return progress + (lines.isEmpty() ? "NO DATA\r" : lines);
  }

  private String line(String unit, String payload) {
    return hidesSenders ? payload + "\r" : bus.line(unit, payload);
  }

  /** A session is begun with the first request and after a long pause. */
  private String progress() {
    boolean begins = bus.hasSessions && clock.seconds() - lastRequestSeconds > SESSION_SECONDS;
    lastRequestSeconds = clock.seconds();
    requestSeconds.add(clock.seconds());
    sessions += begins ? 1 : 0;
    return begins ? "BUS INIT: ...OK\r" : "";
  }

  private static List<String> payloads(String unit, Map<Integer, String> data, String request) {
    if (request.equals("0902") && unit.equals("10")) {
      return List.of(
          "49020100000031", "4902025A5A5450", "49020339414731", "49020452303030", "49020530303432");
    }
    if (!request.matches("01[0-9A-F]{2}")) {
      return List.of();
    }
    int number = Integer.parseInt(request.substring(2), 16);
    String bytes = number % 0x20 == 0 ? map(data, number) : data.get(number);
    boolean isKnown = bytes != null && (number == 0 || !bytes.equals("00000000"));
    return isKnown ? List.of("41" + request.substring(2) + bytes) : List.of();
  }
}
