package steadypull.adapter;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;
import steadypull.adapter.dialogue.Dialogue;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;
import steadypull.adapter.link.ReadOnlyGate;

/**
 * One command after the other over an open link, always through the read-only gate. Waits in short
 * slices, so that a sign of life and the wish to stop get through. Reader thread only.
 */
final class AdapterPort implements AutoCloseable {
  private static final long SLICE_NANOS = Duration.ofMillis(100).toNanos();
  private static final long RESYNC_NANOS = Duration.ofSeconds(1).toNanos();

  /** ISO 15765-4: P2* is 5 s after "response pending"; half a second for the adapter. */
  private static final long PENDING_NANOS = Duration.ofMillis(5500).toNanos();

  private static final long LONGEST_REPLY_NANOS = Duration.ofSeconds(20).toNanos();

  /** Takes a whole reply on its bytes. */
  @FunctionalInterface
  interface PlainReply {
    /** Nothing is taken so; every reply is read as text. */
    PlainReply NONE = (text, length, request) -> false;

    /**
     * Takes so many bytes of a reply to a request line; false if it is to be read as text, because
     * it is anything else than data.
     */
    boolean read(byte[] text, int length, byte[] request);
  }

  private final ReadOnlyGate gate;
  private final LinkClock clock;
  private final Pulse pulse;
  private final Duration leastGap;
  private final Dialogue dialogue = new Dialogue();
  private final byte[] came = new byte[Link.MOST_AT_ONCE];
  private long lastTextNanoTime;
  private long lastRequestNanoTime;
  private long gapAfterReplyNanos;
  private boolean promptWasHeard;
  private Optional<SerialCanChannel> serialCan = Optional.empty();

  private AdapterPort(Link link, LinkClock clock, Pulse pulse, Duration leastGap) {
    this.gate = ReadOnlyGate.before(link);
    this.clock = clock;
    this.pulse = pulse;
    this.leastGap = leastGap;
    this.lastTextNanoTime = clock.nanoTime();
    this.lastRequestNanoTime = lastTextNanoTime - leastGap.toNanos();
  }

  /**
   * Opens a source.
   *
   * @param leastGap least span between the starts of two requests to the vehicle; zero or more
   */
  static AdapterPort open(LinkSource source, Pulse pulse, Duration leastGap) throws LinkException {
    return new AdapterPort(source.open(), source.clock(), pulse, leastGap);
  }

  String address() {
    return gate.address();
  }

  /** From now on leaves at least this gap between an answer and the next request to the vehicle. */
  void leaveAfterAnswers(Duration gap) {
    gapAfterReplyNanos = gap.toNanos();
  }

  /** When the last request to the vehicle was sent. */
  long lastRequestNanoTime() {
    return lastRequestNanoTime;
  }

  /** When the last byte that belongs to a text arrived; the prompt is none. */
  long lastTextNanoTime() {
    return lastTextNanoTime;
  }

  /**
   * Sends a command and waits for its reply. A request whose answer has begun is given the time
   * that a control unit may take after "response pending". Silence also when the reader is to stop.
   */
  Reply ask(String command, Duration patience) throws LinkException {
    byte[] line = (command + "\r").getBytes(StandardCharsets.US_ASCII);
    return ask(line, !command.startsWith("AT"), patience, PlainReply.NONE);
  }

  /**
   * Sends a request to the vehicle; a reply of plain data is read on its bytes.
   *
   * @param line hex digits and a carriage return; unchanged until the reply is complete
   * @return as {@link #ask(String, Duration)}; data without lines if the reply was taken as plain
   */
  Reply askVehicle(byte[] line, Duration patience, PlainReply plain) throws LinkException {
    return ask(line, /* isForVehicle= */ true, patience, plain);
  }

  private Reply ask(byte[] line, boolean isForVehicle, Duration patience, PlainReply plain)
      throws LinkException {
    if (serialCan.isPresent()) {
      return new Reply.NotUnderstood();
    }
    if (isForVehicle) {
      keepGap();
    }
    Optional<Reply.Restarted> uninvited = Dialogue.uninvited(came, gate.read(came, 0));
    if (uninvited.isPresent()) {
      return uninvited.get();
    }
    dialogue.begin(line);
    gate.write(line);
    if (!isCompleteIn(patience.toNanos(), isForVehicle ? PENDING_NANOS : 0)) {
      return dialogue.giveUp();
    }
    return plain.read(dialogue.heard(), dialogue.length(), line)
        ? Reply.Data.PLAIN
        : dialogue.reply();
  }

  /**
   * Asks for an adapter of the other kind, which does not know the text dialogue. The question is
   * harmless to an adapter that does.
   *
   * @return the channel to it, over which everything goes from now on; empty if none answers
   */
  Optional<SerialCanChannel> findSerialCan() throws LinkException {
    if (serialCan.isEmpty()) {
      SerialCanChannel channel = new SerialCanChannel(gate, clock, pulse, this::keepGap);
      if (channel.version().isPresent()) {
        gate.guardSerialCan();
        serialCan = Optional.of(channel);
      }
    }
    return serialCan;
  }

  /** The channel to an adapter of the other kind, once one was found. */
  Optional<SerialCanChannel> serialCan() {
    return serialCan;
  }

  private void keepGap() {
    try {
      long due =
          Math.max(lastRequestNanoTime + leastGap.toNanos(), lastTextNanoTime + gapAfterReplyNanos);
      long left = due - clock.nanoTime();
      if (left > 0) {
        clock.pause(Duration.ofNanos(left));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    lastRequestNanoTime = clock.nanoTime();
  }

  /** Whether a restart or a name was told while nothing was asked. Returns at once. */
  boolean tellsRestart() throws LinkException {
    return Dialogue.uninvited(came, gate.read(came, 0)).isPresent();
  }

  /**
   * Ends whatever the adapter is busy with after a missing prompt.
   *
   * @return whether it is ready for the next command
   */
  boolean resynchronise() throws LinkException {
    if (!promptWasHeard) {
      return false;
    }
    gate.write(dialogue.begin(""));
    return isCompleteIn(RESYNC_NANOS, 0);
  }

  /** The last reply as text, for one that was taken as plain and then made no sense. */
  Reply lastReply() {
    return dialogue.reply();
  }

  private boolean isCompleteIn(long patienceNanos, long patienceOnceBegunNanos)
      throws LinkException {
    long start = clock.nanoTime();
    long deadline = start + patienceNanos;
    while (pulse.goesOn()) {
      long left = deadline - clock.nanoTime();
      if (left <= 0) {
        return false;
      }
      int count = gate.read(came, Math.min(left, SLICE_NANOS));
      if (isComplete(count)) {
        return true;
      }
      if (count > 0) {
        long longer = clock.nanoTime() + patienceOnceBegunNanos;
        deadline = Math.max(deadline, Math.min(longer, start + LONGEST_REPLY_NANOS));
      }
    }
    return false;
  }

  private boolean isComplete(int count) {
    boolean hasText = false;
    for (int i = 0; i < count; i++) {
      hasText |= came[i] > ' ' && came[i] != '>';
      promptWasHeard |= came[i] == '>';
    }
    if (hasText) {
      lastTextNanoTime = clock.nanoTime();
    }
    return dialogue.accept(came, count);
  }

  @Override
  public void close() {
    try {
      if (serialCan.isPresent()) {
        serialCan.get().close();
      }
    } catch (LinkException alreadyGone) {
      // Then the adapter has lost its power, and with it the channel.
      return;
    } finally {
      gate.close();
    }
  }
}
