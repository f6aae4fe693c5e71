package steadypull.adapter;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Optional;
import java.util.Queue;
import steadypull.adapter.dialogue.SerialCanCommand;
import steadypull.adapter.dialogue.SerialCanInput;
import steadypull.adapter.dialogue.SerialCanLine;
import steadypull.adapter.frame.CanFrame;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.ReadOnlyGate;

/**
 * Lines to and from a serial CAN adapter, always through the read-only gate: settings that are
 * answered, frames that come and go. Waits in short slices, so that a sign of life and the wish to
 * stop get through. Reader thread only.
 */
final class SerialCanChannel {
  private static final Duration SLICE = Duration.ofMillis(100);
  private static final Duration SETTING_PATIENCE = Duration.ofMillis(300);

  private final ReadOnlyGate gate;
  private final LinkClock clock;
  private final Pulse pulse;
  private final Runnable gap;
  private final SerialCanInput input = new SerialCanInput();
  private final Queue<SerialCanLine> lines = new ArrayDeque<>();
  private boolean hasTraffic;

  /**
   * Makes a channel over an open link.
   *
   * @param gap waits until the next request to the vehicle is due
   */
  SerialCanChannel(ReadOnlyGate gate, LinkClock clock, Pulse pulse, Runnable gap) {
    this.gate = gate;
    this.clock = clock;
    this.pulse = pulse;
    this.gap = gap;
  }

  String address() {
    return gate.address();
  }

  LinkClock clock() {
    return clock;
  }

  boolean goesOn() {
    return pulse.goesOn();
  }

  /**
   * Whether a frame was heard since the channel was opened. Damaged frames never get so far: the
   * bit rate is right then.
   */
  boolean hasTraffic() {
    return hasTraffic;
  }

  /** Goes on the bus; gives the line that answers it. */
  Optional<SerialCanLine> open() throws LinkException {
    hasTraffic = false;
    return say(SerialCanCommand.OPEN);
  }

  /** The versions of an adapter of this kind, or empty where none answers. */
  Optional<String> version() throws LinkException {
    return say(SerialCanCommand.VERSION).orElse(null)
            instanceof SerialCanLine.Version(String number)
        ? Optional.of(number)
        : Optional.empty();
  }

  /** Takes the adapter off the bus, without waiting for its answer. */
  void close() throws LinkException {
    write(SerialCanCommand.CLOSE);
  }

  /** Says a command; gives the line that answers it, or empty if none came in time. */
  Optional<SerialCanLine> say(String command) throws LinkException {
    forget();
    write(command);
    long deadline = clock.nanoTime() + SETTING_PATIENCE.toNanos();
    Optional<SerialCanLine> line = next(deadline);
    while (line.isPresent() && !isAnswer(line.get())) {
      line = next(deadline);
    }
    return line;
  }

  private static boolean isAnswer(SerialCanLine line) {
    return switch (line) {
      case SerialCanLine.Obeyed obeyed -> true;
      case SerialCanLine.Refused refused -> true;
      case SerialCanLine.Status status -> true;
      case SerialCanLine.Version version -> true;
      case SerialCanLine.SerialNumber number -> true;
      case SerialCanLine.Sent late -> false;
      case SerialCanLine.Frame traffic -> false;
      case SerialCanLine.RemoteFrame traffic -> false;
      case SerialCanLine.Unreadable damaged -> false;
    };
  }

  /** Forgets what came while nobody waited for it, and waits until the next request is due. */
  void beginRequest() throws LinkException {
    gap.run();
    forget();
  }

  private void forget() throws LinkException {
    gate.read(Duration.ZERO);
    input.clear();
    lines.clear();
  }

  /** Puts a frame on the bus; whether it was taken comes as one of the next lines. */
  void send(CanFrame frame) throws LinkException {
    write(SerialCanCommand.frame(frame.identifier(), frame.isLong(), frame.data().toString()));
  }

  private void write(String line) throws LinkException {
    gate.write((line + "\r").getBytes(StandardCharsets.US_ASCII));
  }

  /** The next line, or empty if none came until then or the reader is to stop. */
  Optional<SerialCanLine> next(long deadlineNanoTime) throws LinkException {
    while (lines.isEmpty() && pulse.goesOn()) {
      Duration left = Duration.ofNanos(deadlineNanoTime - clock.nanoTime());
      if (!left.isPositive()) {
        break;
      }
      lines.addAll(input.accept(gate.read(left.compareTo(SLICE) < 0 ? left : SLICE)));
    }
    hasTraffic |= lines.peek() instanceof SerialCanLine.Frame;
    return Optional.ofNullable(lines.poll());
  }
}
