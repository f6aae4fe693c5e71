package steadypull.adapter;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Control units that answer requests with CAN frames, as an adapter prints them with headers on and
 * blanks off: filler bytes included. Written from the reference examples, not from the reader.
 */
class ScriptedVehicle {
  /** Data of service 01 parameters by control unit, hex. */
  final Map<String, Map<Integer, String>> units = new TreeMap<>();

  /** Whole answers by request, tried first. */
  final Map<String, String> fixed = new TreeMap<>();

  boolean isAwake = true;
  boolean knowsService01 = true;

  /** Whether the parameters stand behind data identifiers F400 to F4FF too. */
  boolean byIdentifier;

  /** Whether several at once are refused with code 13. */
  boolean refusesSeveral;

  boolean answersSeveral = true;
  boolean hidesSenders;

  /** Whether a control unit answers to its own request header, 8 below its address. */
  boolean answersAlone;

  String header = "7DF";

  ScriptedVehicle parameter(String unit, int number, String data) {
    units.computeIfAbsent(unit, u -> new TreeMap<>()).put(number, data);
    return this;
  }

  ScriptedVehicle without(int number) {
    units.values().forEach(data -> data.remove(number));
    return this;
  }

  String answer(String request) {
    if (!isAwake) {
      return "NO DATA\r";
    }
    String whole = fixed.get(header + " " + request);
    if (whole != null) {
      return whole;
    }
    if (byIdentifier && request.startsWith("22F4")) {
      return orNoData(framesOf("01" + request.substring(2).replaceAll("F4(..)", "$1"), "F4"));
    }
    boolean isHeard = answersAlone || hidesSenders || isToAll();
    if (!knowsService01 || !isHeard || !request.startsWith("01")) {
      return "NO DATA\r";
    }
    return orNoData(framesOf(request, ""));
  }

  private static String orNoData(String frames) {
    return frames.isEmpty() ? "NO DATA\r" : frames;
  }

  /** The answers of all control units; the block stands before every parameter's number. */
  private String framesOf(String request, String block) {
    return units.entrySet().stream()
        .filter(unit -> isAsked(unit.getKey()))
        .flatMap(unit -> lines(unit.getKey(), payload(unit.getValue(), request, block)).stream())
        .collect(Collectors.joining());
  }

  /** ISO 15765-4: 7DF asks all, 7E0 to 7E7 ask the one that answers as 7E8 to 7EF. */
  private boolean isAsked(String unit) {
    return isToAll() || Integer.parseInt(header, 16) + 8 == Integer.parseInt(unit, 16);
  }

  private boolean isToAll() {
    return header.equals("7DF") || header.equals("18DB33F1");
  }

  private List<String> lines(String unit, String payload) {
    return hidesSenders ? bareLines(payload) : frames(unit, payload);
  }

  /** As adapters print with headers off: the payload, or its length and numbered parts. */
  static List<String> bareLines(String payload) {
    List<String> lines = new ArrayList<>();
    if (payload.isEmpty() || payload.length() <= 14) {
      return payload.isEmpty() ? lines : List.of(payload + "\r");
    }
    lines.add("%03X\r".formatted(payload.length() / 2));
    int from = 0;
    for (int part = 0; from < payload.length(); part++) {
      int digits = part == 0 ? 12 : 14;
      String text = payload.substring(from, Math.min(from + digits, payload.length()));
      lines.add("%X:%s%s\r".formatted(part % 16, text, "AA".repeat((digits - text.length()) / 2)));
      from += digits;
    }
    return lines;
  }

  private String payload(Map<Integer, String> data, String request, String block) {
    List<Integer> asked = numbers(request);
    if (asked.size() > 1 && !answersSeveral) {
      return "";
    }
    if (asked.size() > 1 && refusesSeveral) {
      return block.isEmpty() ? "7F0113" : "7F2213";
    }
    StringBuilder payload = new StringBuilder(block.isEmpty() ? "41" : "62");
    for (int number : asked) {
      String bytes = number % 0x20 == 0 ? map(data, number) : data.get(number);
      if (bytes != null) {
        payload.append(block).append("%02X".formatted(number)).append(bytes);
      }
    }
    return payload.length() == 2 ? "" : payload.toString();
  }

  private static List<Integer> numbers(String request) {
    return IntStream.range(1, request.length() / 2)
        .mapToObj(i -> Integer.parseInt(request.substring(2 * i, 2 * i + 2), 16))
        .toList();
  }

  static String map(Map<Integer, String> data, int base) {
    long bits = 0;
    for (int number : data.keySet()) {
      if (number > base && number <= base + 0x20) {
        bits |= 1L << (base + 0x20 - number);
      } else if (number > base + 0x20) {
        bits |= 1;
      }
    }
    return "%08X".formatted(bits);
  }

  /** ISO 15765-2 frames with filler AA, one line each. */
  static List<String> frames(String unit, String payload) {
    List<String> lines = new ArrayList<>();
    int bytes = payload.length() / 2;
    if (bytes == 0) {
      return lines;
    }
    if (bytes <= 7) {
      lines.add(line(unit + "%02X".formatted(bytes) + payload, unit));
      return lines;
    }
    lines.add(line(unit + "1%03X".formatted(bytes) + payload.substring(0, 12), unit));
    int sequence = 1;
    for (int at = 12; at < payload.length(); at += 14) {
      String part = payload.substring(at, Math.min(at + 14, payload.length()));
      lines.add(line(unit + "2%X".formatted(sequence) + part, unit));
      sequence = (sequence + 1) % 16;
    }
    return lines;
  }

  private static String line(String text, String unit) {
    return text + "AA".repeat((unit.length() + 16 - text.length()) / 2) + "\r";
  }
}
