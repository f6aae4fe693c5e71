package steadypull.adapter;

import java.time.Duration;
import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.dialogue.SerialCanCommand;
import steadypull.adapter.dialogue.SerialCanLine;
import steadypull.adapter.frame.CanFrame;
import steadypull.adapter.frame.FlowControl;
import steadypull.adapter.frame.MessageBuffer;
import steadypull.adapter.frame.Payload;
import steadypull.adapter.frame.SegmentReception;
import steadypull.adapter.frame.SegmentSender;
import steadypull.adapter.link.LinkException;

/**
 * One question on the bus and all answers to it. Ends when everybody had the time to begin an
 * answer and every answer that began is whole or overdue; at once when all that can answer have
 * done so. Used once, on the reader thread.
 */
final class SerialCanExchange {
  /** ISO 15765-4: P2 is 50 ms until an answer begins; the rest is for the way to the adapter. */
  private static final Duration ANSWER_BEGINS = Duration.ofMillis(50 + 70);

  /** ISO 15765-4: P2* is 5 s after "response pending"; half a second for the adapter. */
  private static final Duration PENDING_PATIENCE = Duration.ofMillis(5500);

  private static final Duration LONGEST_REPLY = Duration.ofSeconds(20);

  /** ISO 15765-4: N_Cr is 150 ms between two parts; the rest is for the way from the adapter. */
  private static final Duration NEXT_PART = Duration.ofMillis(150 + 100);

  /** ISO 15765-4: N_Bs. */
  private static final Duration FLOW_CONTROL = Duration.ofMillis(75);

  /** Eight control units and some repetition; more is a fault that must not flood the bus. */
  private static final int MOST_FLOW_CONTROLS = 32;

  private static final int NEGATIVE = 0x7F;
  private static final int PENDING = 0x78;

  private final SerialCanChannel channel;
  private final CanBus bus;
  private final VehicleRequest request;
  private final Set<String> awaited;
  private final MessageBuffer messages;
  private final SegmentReception reception = new SegmentReception(NEXT_PART);
  private final Set<String> pending = new HashSet<>();
  private long startNanoTime;
  private long lastAnswerNanoTime;
  private int flowControls;
  private boolean isRefused;
  private boolean isSettled;

  /**
   * Prepares a question.
   *
   * @param expected senders of all answers to a question to everybody; empty where not known
   * @param messages where whole messages go
   */
  SerialCanExchange(
      SerialCanChannel channel,
      CanBus bus,
      VehicleRequest request,
      Set<String> expected,
      MessageBuffer messages) {
    this.channel = channel;
    this.bus = bus;
    this.request = request;
    this.awaited = new HashSet<>(expected);
    this.messages = messages;
  }

  /** Asks and collects. */
  Reply run() throws LinkException {
    channel.beginRequest();
    startNanoTime = now();
    lastAnswerNanoTime = startNanoTime;
    int to = request.unit().map(u -> Integer.parseInt(u, 16)).orElse(bus.everybody());
    send(to, question());
    Optional<SerialCanLine> line = channel.next(deadline());
    while (line.isPresent() && !isComplete(line.get())) {
      line = channel.next(deadline());
    }
    if (messages.count() > 0) {
      isSettled = true;
      return Reply.Data.PLAIN;
    }
    return unanswered();
  }

  /**
   * Whether the question may still be on its way, over and over: nobody is known to have seen it.
   */
  boolean mayBeRepeated() {
    return !isSettled;
  }

  /** When the last frame of an answer arrived; the start if none did. */
  long lastAnswerNanoTime() {
    return lastAnswerNanoTime;
  }

  private Payload question() {
    return switch (new SegmentSender(request.payload(), FLOW_CONTROL).next(startNanoTime)) {
      case SegmentSender.Step.Send(Payload frame) -> frame;
      case SegmentSender.Step.Wait wait -> throw new IllegalStateException("waits at once");
      case SegmentSender.Step.Done done -> throw new IllegalStateException("nothing to send");
      case SegmentSender.Step.Failed failed -> throw new IllegalStateException("failed at once");
    };
  }

  private void send(int identifier, Payload data) throws LinkException {
    channel.send(new CanFrame(identifier, bus.isLong(), data));
  }

  private long now() {
    return channel.clock().nanoTime();
  }

  /** Until when at least one more line may be worth waiting for. */
  private long deadline() {
    Duration patience = pending.isEmpty() ? ANSWER_BEGINS : PENDING_PATIENCE;
    long from = pending.isEmpty() ? startNanoTime : lastAnswerNanoTime;
    long deadline = from + patience.toNanos();
    OptionalLong part = reception.deadlineNanoTime(now());
    long latest = startNanoTime + LONGEST_REPLY.toNanos();
    return Math.min(latest, Math.max(deadline, part.orElse(deadline)));
  }

  /** Takes a line; whether it completes the reply. */
  private boolean isComplete(SerialCanLine line) throws LinkException {
    return switch (line) {
      case SerialCanLine.Frame frame -> take(frame);
      case SerialCanLine.Refused refused -> {
        isRefused = true;
        yield messages.count() == 0 && reception.deadlineNanoTime(now()).isEmpty();
      }
      case SerialCanLine.Sent sent -> false;
      case SerialCanLine.Obeyed sent -> false;
      case SerialCanLine.RemoteFrame traffic -> false;
      case SerialCanLine.Status late -> false;
      case SerialCanLine.Version late -> false;
      case SerialCanLine.SerialNumber late -> false;
      case SerialCanLine.Unreadable damaged -> false;
    };
  }

  private boolean take(SerialCanLine.Frame line) throws LinkException {
    CanFrame frame = new CanFrame(line.identifier(), line.isLong(), Payload.ofHex(line.data()));
    Optional<String> sender = bus.sender(frame).filter(s -> isAsked(frame));
    return sender.isPresent() && take(sender.get(), frame);
  }

  private boolean take(String sender, CanFrame frame) throws LinkException {
    lastAnswerNanoTime = now();
    return switch (reception.accept(frame, lastAnswerNanoTime)) {
      case SegmentReception.Outcome.Whole(Payload message) -> take(sender, message);
      case SegmentReception.Outcome.Answer(FlowControl flowControl) -> {
        if (flowControls++ < MOST_FLOW_CONTROLS) {
          send(bus.requestOf(frame.identifier()), flowControl.toBytes());
        }
        yield false;
      }
      case SegmentReception.Outcome.Nothing nothing -> false;
    };
  }

  private boolean isAsked(CanFrame frame) {
    String header = (bus.isLong() ? "%08X" : "%03X").formatted(bus.requestOf(frame.identifier()));
    return request.unit().isEmpty() || request.unit().get().toUpperCase(Locale.ROOT).equals(header);
  }

  private boolean take(String sender, Payload message) {
    if (isPending(message)) {
      pending.add(sender);
      return false;
    }
    pending.remove(sender);
    byte[] bytes = message.toBytes();
    messages.add(sender, bytes, 0, bytes.length);
    boolean wasAwaited = awaited.remove(sender);
    return request.unit().isPresent() || (wasAwaited && awaited.isEmpty());
  }

  private static boolean isPending(Payload message) {
    return message.size() == 3 && message.at(0) == NEGATIVE && message.at(2) == PENDING;
  }

  /** Why no message came: asks the adapter what it saw. */
  private Reply unanswered() throws LinkException {
    Optional<SerialCanLine> status = channel.say(SerialCanCommand.STATUS);
    if (status.isEmpty()) {
      return new Reply.Silence("");
    }
    if (status.get() instanceof SerialCanLine.Status flags) {
      isSettled = !flags.hasBusFault();
      return seen(flags);
    }
    // A channel that is closed refuses both: the adapter has lost its settings.
    return isRefused ? new Reply.Restarted("the channel was found closed") : new Reply.NoData();
  }

  private static Reply seen(SerialCanLine.Status status) {
    if (status.hasBusFault()) {
      return new Reply.BusFault("BUS ERROR, status F%02X".formatted(status.flags()));
    }
    return status.hasLostFrames() ? new Reply.Overflowed() : new Reply.NoData();
  }
}
