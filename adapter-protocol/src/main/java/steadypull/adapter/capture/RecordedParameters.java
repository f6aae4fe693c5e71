package steadypull.adapter.capture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadypull.adapter.capture.RecordedDialogue.Exchange;
import steadypull.adapter.capture.RecordedDialogue.Piece;
import steadypull.adapter.diagnostic.CurrentDataReader;
import steadypull.adapter.frame.Message;
import steadypull.adapter.frame.MessageFormat;
import steadypull.adapter.frame.Payload;

/**
 * What a capture over CAN tells of service 01 parameters, whichever requests brought it: a reader
 * that packs its questions otherwise is answered too. Knows replies with headers, as the reader
 * asks for them. Immutable once made.
 */
final class RecordedParameters {
  private static final Pattern REQUEST = Pattern.compile("01((?:[0-9A-F]{2}){1,6})[1-9A-F]?\r");
  private static final Pattern FRAME = Pattern.compile("[0-9A-F]{5,24}");
  private static final int PARAMETERS = 0x100;
  private static final int SUPPORT_MAPS = 0x20;
  private static final int POSITIVE = 0x41;

  /**
   * One value as it was heard.
   *
   * @param delayMicros from the request on
   */
  private record Told(long delayMicros, Payload data) {}

  private final Map<String, int[]> lengths = new HashMap<>();
  private final NavigableMap<String, Map<Integer, NavigableMap<Long, Told>>> byUnit =
      new TreeMap<>();
  private MessageFormat format = MessageFormat.CAN_11_BIT;

  RecordedParameters(List<Exchange> exchanges) {
    // Alone a parameter tells how long it is; then those that came together can be taken apart.
    exchanges.stream().filter(each -> numbers(each.request()).size() == 1).forEach(this::take);
    exchanges.stream().filter(each -> numbers(each.request()).size() > 1).forEach(this::take);
  }

  /** Parameters that a request asks for; none if it is another request or asks for support maps. */
  private static List<Integer> numbers(String request) {
    Matcher form = REQUEST.matcher(request.replace(" ", "").toUpperCase(Locale.ROOT));
    List<Integer> numbers = new ArrayList<>();
    if (form.matches()) {
      for (byte number : Payload.ofHex(form.group(1)).toBytes()) {
        numbers.add(number & 0xFF);
      }
    }
    return numbers.stream().anyMatch(number -> number % SUPPORT_MAPS == 0) ? List.of() : numbers;
  }

  private void take(Exchange exchange) {
    List<String> lines = frames(exchange);
    if (lines.isEmpty() || !MessageFormat.ofLine(lines.getFirst()).isCan()) {
      return;
    }
    format = MessageFormat.ofLine(lines.getFirst());
    for (Message message : format.messages(lines)) {
      take(numbers(exchange.request()), message, exchange);
    }
  }

  private static List<String> frames(Exchange exchange) {
    StringBuilder heard = new StringBuilder();
    exchange.heard().forEach(piece -> heard.append(piece.text()));
    return Arrays.stream(heard.toString().split("[\r\n>]+"))
        .map(line -> line.replace(" ", ""))
        .filter(FRAME.asMatchPredicate())
        .toList();
  }

  private void take(List<Integer> asked, Message message, Exchange exchange) {
    int[] learnt = lengths.computeIfAbsent(message.controlUnit(), unit -> new int[PARAMETERS]);
    CurrentDataReader reader = new CurrentDataReader();
    if (reader.read(asked, learnt, message.payload()) != CurrentDataReader.Kind.DATA) {
      return;
    }
    long arrival = exchange.heard().getLast().micros();
    for (int i = 0; i < reader.count(); i++) {
      Payload data = message.payload().slice(reader.start(i), reader.end(i));
      if (asked.size() == 1) {
        learnt[reader.number(i)] = data.size();
      }
      byUnit
          .computeIfAbsent(message.controlUnit(), unit -> new HashMap<>())
          .computeIfAbsent(reader.number(i), number -> new TreeMap<>())
          .put(exchange.micros(), new Told(arrival - exchange.micros(), data));
    }
  }

  /**
   * Answers a request from what was told between two moments.
   *
   * @param header of the one control unit that is asked; empty text if all are
   * @return empty if the request asks for no parameters or nobody told any of them then
   */
  Optional<Exchange> answer(String request, String header, long fromMicros, long toMicros) {
    List<Integer> asked = numbers(request);
    StringBuilder text = new StringBuilder();
    long delay = 0;
    for (String unit : byUnit.keySet()) {
      StringBuilder hex = new StringBuilder();
      for (int number : isAsked(unit, header) ? asked : List.<Integer>of()) {
        Optional<Told> told = latest(unit, number, fromMicros, toMicros);
        if (told.isPresent()) {
          hex.append("%02X%s".formatted(number, told.get().data()));
          delay = Math.max(delay, told.get().delayMicros());
        }
      }
      text.append(hex.isEmpty() ? "" : lines(unit, "%02X%s".formatted(POSITIVE, hex)));
    }
    return text.isEmpty()
        ? Optional.empty()
        : Optional.of(new Exchange(0, request, List.of(new Piece(delay, text + "\r>"))));
  }

  private boolean isAsked(String unit, String header) {
    return header.isEmpty() || format.requestHeader(unit).filter(header::equals).isPresent();
  }

  private Optional<Told> latest(String unit, int number, long fromMicros, long toMicros) {
    return Optional.ofNullable(byUnit.get(unit))
        .map(each -> each.get(number))
        .map(told -> told.floorEntry(toMicros))
        .filter(entry -> entry.getKey() >= fromMicros)
        .map(Map.Entry::getValue);
  }

  /**
   * ISO 15765-2: a single frame of up to 7 bytes, else a first one with 6 and 7 in each further.
   */
  private static String lines(String unit, String hex) {
    int bytes = hex.length() / 2;
    if (bytes <= 7) {
      return unit + "%02X".formatted(bytes) + filled(hex, 14) + "\r";
    }
    StringBuilder lines = new StringBuilder();
    lines.append(unit).append("1%03X".formatted(bytes)).append(hex, 0, 12).append('\r');
    for (int from = 12, sequence = 1; from < hex.length(); from += 14, sequence++) {
      String part = hex.substring(from, Math.min(from + 14, hex.length()));
      lines.append(unit).append("2%X".formatted(sequence % 16)).append(filled(part, 14));
      lines.append('\r');
    }
    return lines.toString();
  }

  private static String filled(String hex, int digits) {
    return hex + "A".repeat(digits - hex.length());
  }
}
