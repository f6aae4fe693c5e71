package steadypull.adapter;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import steadypull.adapter.frame.CanFrame;
import steadypull.adapter.frame.MessageFormat;

/**
 * The four ways of ISO 15765-4 to carry diagnostics over CAN, in the order in which they are tried,
 * with the identifiers that each uses.
 */
enum CanBus {
  SHORT_500("6", 500, false),
  LONG_500("7", 500, true),
  SHORT_250("8", 250, false),
  LONG_250("9", 250, true);

  private static final int EVERYBODY_SHORT = 0x7DF;
  private static final int EVERYBODY_LONG = 0x18DB_33F1;

  /** 7E8 to 7EF answer to 7E0 to 7E7. */
  private static final int FIRST_ANSWER = 0x7E8;

  private static final int LAST_ANSWER = 0x7EF;
  private static final int ANSWER_DISTANCE = 8;

  /** 18DAF1xx answers to 18DAxxF1. */
  private static final int LONG_ANSWERS = 0x18DA_F100;

  private static final int TESTER = 0xF1;
  private static final int LONG_REQUESTS = 0x18DA_00F1;

  private final String number;
  private final int kilobits;
  private final boolean isLong;

  CanBus(String number, int kilobits, boolean isLong) {
    this.number = number;
    this.kilobits = kilobits;
    this.isLong = isLong;
  }

  /** All of them, the one with this number first; a number of none of them changes nothing. */
  static List<CanBus> inOrder(String firstNumber) {
    Stream<CanBus> first = Arrays.stream(values()).filter(b -> b.number.equals(firstNumber));
    return Stream.concat(first, Arrays.stream(values())).distinct().toList();
  }

  /** The number that AT-command adapters have for it. */
  String number() {
    return number;
  }

  int kilobits() {
    return kilobits;
  }

  MessageFormat format() {
    return isLong ? MessageFormat.CAN_29_BIT : MessageFormat.CAN_11_BIT;
  }

  String inWords() {
    return "ISO 15765-4 (CAN %d/%d)".formatted(isLong ? 29 : 11, kilobits);
  }

  boolean isLong() {
    return isLong;
  }

  int everybody() {
    return isLong ? EVERYBODY_LONG : EVERYBODY_SHORT;
  }

  /** Whether a request header in hex addresses one control unit here. */
  boolean canAddress(String header) {
    return header.toUpperCase(Locale.ROOT).matches(isLong ? "18DA(?!F1)[0-9A-F]{2}F1" : "7E[0-7]");
  }

  /** The sender's address as it is written elsewhere, or empty if the frame is no answer. */
  Optional<String> sender(CanFrame frame) {
    int identifier = frame.identifier();
    boolean isAnswer =
        isLong
            ? (identifier & ~0xFF) == LONG_ANSWERS && (identifier & 0xFF) != TESTER
            : identifier >= FIRST_ANSWER && identifier <= LAST_ANSWER;
    return isAnswer && frame.isLong() == isLong
        ? Optional.of((isLong ? "%08X" : "%03X").formatted(identifier))
        : Optional.empty();
  }

  /** The identifier that addresses whoever answers with this one. */
  int requestOf(int answer) {
    return isLong ? LONG_REQUESTS | (answer & 0xFF) << 8 : answer - ANSWER_DISTANCE;
  }
}
