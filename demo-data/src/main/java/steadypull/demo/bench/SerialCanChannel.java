package steadypull.demo.bench;

import java.util.List;
import java.util.Optional;

/** Whether the channel of a serial CAN adapter is open, at which rate, and how it fares. */
final class SerialCanChannel {
  /** kbit/s of S0 to S8; S7 is 800 in most. */
  private static final List<Integer> RATES = List.of(10, 20, 50, 100, 125, 250, 500, 800, 1000);

  private static final int RECEIVE_LOST = 0x08;
  private static final int BUS_ERROR = 0x84; // error warning and bus error
  private static final int WRAP_MILLIS = 60_000;

  private enum State {
    CLOSED,
    OPEN,
    LISTENING
  }

  private State state = State.CLOSED;
  private int kilobitsPerSecond;
  private boolean isStamping;
  private int status;

  boolean isOpen() {
    return state != State.CLOSED;
  }

  boolean isSending() {
    return state == State.OPEN;
  }

  int bitsPerSecond() {
    return kilobitsPerSecond * 1000;
  }

  /** A received frame had no room. */
  void lost() {
    status |= RECEIVE_LOST;
  }

  /** A frame could not be sent. */
  void failed() {
    status |= BUS_ERROR;
  }

  /** Four hex digits of milliseconds, or nothing while stamps are off. */
  String stamp(long nanos) {
    return isStamping ? "%04X".formatted(nanos / 1_000_000 % WRAP_MILLIS) : "";
  }

  /** What is said before the line's end; empty if a command is refused. */
  Optional<String> answer(String command) {
    return switch (command) {
      case "O" -> opened(State.OPEN);
      case "L" -> opened(State.LISTENING);
      case "C" -> closed();
      case "F" -> isOpen() ? status() : Optional.empty();
      case "Z0", "Z1" -> whileClosed(() -> isStamping = command.endsWith("1"));
      default -> configured(command);
    };
  }

  private Optional<String> opened(State next) {
    return kilobitsPerSecond == 0 ? Optional.empty() : whileClosed(() -> state = next);
  }

  private Optional<String> closed() {
    boolean wasOpen = isOpen();
    state = State.CLOSED;
    status = 0;
    return wasOpen ? Optional.of("") : Optional.empty();
  }

  private Optional<String> status() {
    String text = "F%02X".formatted(status);
    status = 0;
    return Optional.of(text);
  }

  private Optional<String> configured(String command) {
    if (command.matches("S[0-8]")) {
      return whileClosed(() -> kilobitsPerSecond = RATES.get(command.charAt(1) - '0'));
    }
    return command.matches("[Mm][0-9A-Fa-f]{8}") ? whileClosed(() -> {}) : Optional.empty();
  }

  private Optional<String> whileClosed(Runnable change) {
    if (isOpen()) {
      return Optional.empty();
    }
    change.run();
    return Optional.of("");
  }
}
