package steadypull.adapter.diagnostic;

import java.io.ByteArrayOutputStream;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import steadypull.adapter.frame.Payload;

/**
 * Vehicles that know no service 01: the same parameters stand behind ISO 14229-1 service 22, data
 * identifiers F400 to F4FF for service 01 and F800 to F8FF for service 09 (SAE J1979-2, from memory
 * and not verified; nobody here has seen such a vehicle). Turns questions into the others and
 * answers back, so that nothing else needs to know. Learns lengths from answers to single
 * questions. Used by one thread.
 */
public final class ParametersByIdentifier {
  /** Identifiers that one single frame holds. */
  public static final int MOST_PARAMETERS = 3;

  /** Asks for the first support map: whoever answers is such a vehicle. */
  public static final Payload FIRST_MAP = Payload.of(new byte[] {0x22, (byte) 0xF4, 0x00});

  /** Asks for the identification number by its own identifier (ISO 14229-1, annex C). */
  private static final Payload IDENTIFICATION =
      Payload.of(new byte[] {0x22, (byte) 0xF1, (byte) 0x90});

  private static final int IDENTIFICATION_ITEM = 0x02;
  private static final int CURRENT_DATA = 0x01;
  private static final int INFORMATION = 0x09;
  private static final int BY_IDENTIFIER = 0x22;
  private static final int POSITIVE = 0x40;
  private static final int NEGATIVE = 0x7F;
  private static final int CURRENT_DATA_BLOCK = 0xF4;
  private static final int INFORMATION_BLOCK = 0xF8;

  /** Whole items of service 09: identification 17, calibration 16, its check 4, name 20 bytes. */
  private static final Map<Integer, Integer> ITEM_BYTES = Map.of(2, 17, 4, 16, 6, 4, 10, 20);

  private final Map<String, Map<Integer, Integer>> lengthsBySender = new HashMap<>();

  /**
   * The questions that such a vehicle understands, to be tried in this order.
   *
   * @param question services 01 with up to three parameters, 09 with one item, 22
   * @return empty for what has no counterpart among the requests that only read by identifier
   */
  public List<Payload> questions(Payload question) {
    return switch (question.at(0)) {
      case BY_IDENTIFIER -> List.of(question);
      case CURRENT_DATA -> List.of(identifiers(CURRENT_DATA_BLOCK, question));
      case INFORMATION -> information(question);
      default -> List.of();
    };
  }

  /** The identification number has an identifier of its own besides. */
  private static List<Payload> information(Payload question) {
    Payload turned = identifiers(INFORMATION_BLOCK, question);
    return question.at(1) == IDENTIFICATION_ITEM
        ? List.of(turned, IDENTIFICATION)
        : List.of(turned);
  }

  private static Payload identifiers(int block, Payload question) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write(BY_IDENTIFIER);
    for (int i = 1; i < question.size(); i++) {
      bytes.write(block);
      bytes.write(question.at(i));
    }
    return Payload.of(bytes.toByteArray());
  }

  /** Whether everything in a question may be asked at once: some sender told each length. */
  public boolean isLearnt(Payload question) {
    for (int i = 1; i < question.size(); i++) {
      int number = question.at(i);
      if (lengthsBySender.values().stream().noneMatch(lengths -> lengths.containsKey(number))) {
        return false;
      }
    }
    return true;
  }

  /**
   * Turns an answer back into one to the question as it was asked first.
   *
   * @param question services 01, 09 or 22, before it was turned
   * @param message a whole message of one control unit
   * @return the message as service 01 or 09 would have it. One that cannot be taken apart ends
   *     within its first parameter, so that it is judged a misfit further up.
   */
  public Payload answer(Payload question, String sender, Payload message) {
    boolean isTurned = question.at(0) != BY_IDENTIFIER;
    if (isTurned && message.size() == 3 && message.startsWith(NEGATIVE, BY_IDENTIFIER)) {
      return bytes(NEGATIVE, question.at(0), message.at(2));
    }
    if (!isTurned || !message.startsWith(BY_IDENTIFIER + POSITIVE)) {
      return message;
    }
    return switch (question.at(0)) {
      case CURRENT_DATA -> currentData(question, sender, message);
      case INFORMATION -> information(question.at(1), message);
      default -> message;
    };
  }

  private Payload currentData(Payload question, String sender, Payload message) {
    Map<Integer, Integer> lengths = lengthsBySender.computeIfAbsent(sender, s -> new HashMap<>());
    if (question.size() == 2 && message.startsWith(0x62, CURRENT_DATA_BLOCK, question.at(1))) {
      lengths.put(question.at(1), message.size() - 3);
      return joined(bytes(CURRENT_DATA + POSITIVE, question.at(1)), message.from(3));
    }
    ByteArrayOutputStream turned = new ByteArrayOutputStream();
    turned.write(CURRENT_DATA + POSITIVE);
    return takeApart(numbers(question), lengths, message, turned)
        ? Payload.of(turned.toByteArray())
        : bytes(CURRENT_DATA + POSITIVE, question.at(1));
  }

  /** Copies number and data of every identifier; false if a length or identifier does not fit. */
  private static boolean takeApart(
      Set<Integer> asked,
      Map<Integer, Integer> lengths,
      Payload message,
      ByteArrayOutputStream turned) {
    int at = 1;
    while (at < message.size()) {
      boolean isIdentifier =
          at + 1 < message.size()
              && message.at(at) == CURRENT_DATA_BLOCK
              && asked.contains(message.at(at + 1));
      Integer length = isIdentifier ? lengths.get(message.at(at + 1)) : null;
      if (length == null || at + 2 + length > message.size()) {
        return false;
      }
      turned.writeBytes(message.slice(at + 1, at + 2 + length).toBytes());
      at += 2 + length;
    }
    return at > 1;
  }

  private static Set<Integer> numbers(Payload question) {
    Set<Integer> numbers = new HashSet<>();
    for (int i = 1; i < question.size(); i++) {
      numbers.add(question.at(i));
    }
    return numbers;
  }

  /** Service 09 on CAN counts its items, but not in its support maps. */
  private static Payload information(int item, Payload message) {
    boolean isIdentification =
        item == IDENTIFICATION_ITEM && message.startsWith(BY_IDENTIFIER + POSITIVE, 0xF1, 0x90);
    if (!isIdentification
        && !message.startsWith(BY_IDENTIFIER + POSITIVE, INFORMATION_BLOCK, item)) {
      return message;
    }
    Payload data = message.from(3);
    Payload head =
        SupportMap.isMap(item)
            ? bytes(INFORMATION + POSITIVE, item)
            : bytes(
                INFORMATION + POSITIVE,
                item,
                Math.max(1, data.size() / ITEM_BYTES.getOrDefault(item, data.size() + 1)));
    return joined(head, data);
  }

  private static Payload bytes(int... values) {
    byte[] bytes = new byte[values.length];
    for (int i = 0; i < values.length; i++) {
      bytes[i] = (byte) values[i];
    }
    return Payload.of(bytes);
  }

  private static Payload joined(Payload head, Payload tail) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.writeBytes(head.toBytes());
    bytes.writeBytes(tail.toBytes());
    return Payload.of(bytes.toByteArray());
  }
}
