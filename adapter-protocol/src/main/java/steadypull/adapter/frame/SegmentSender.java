package steadypull.adapter.frame;

import java.time.Duration;
import java.util.Optional;

/**
 * The sending side of ISO 15765-2 for one message, normal addressing: asks to be called again until
 * it is done or has failed. Every frame has eight bytes, filled up with zeros (ISO 15765-4). Times
 * are nanoseconds on the caller's clock. Used by one thread.
 */
public final class SegmentSender {
  /** The longest message whose length fits twelve bits. */
  public static final int LONGEST = 4095;

  private static final int FIRST = 0x10;
  private static final int CONSECUTIVE = 0x20;
  private static final int MOST_IN_SINGLE = 7;
  private static final int IN_FIRST = 6;

  /** How often in a row a receiver may say wait (common practice, no source). */
  private static final int MOST_WAITS = 16;

  /** What to do next. A closed set. */
  public sealed interface Step {

    /** Put these eight bytes on the bus, then ask again. */
    record Send(Payload frame) implements Step {}

    /** Nothing to send before this time; hand in frames of the receiver meanwhile, ask again. */
    record Wait(long untilNanoTime) implements Step {}

    /** All was sent. */
    record Done() implements Step {}

    /** It will not be sent. */
    record Failed(Failure failure) implements Step {}
  }

  /** Why a message could not be sent. A closed set. */
  public enum Failure {
    /** No flow control came in time (N_Bs). */
    NO_FLOW_CONTROL,
    /** The message is too long for the receiver. */
    OVERFLOW,
    /** The receiver asked for patience too often. */
    TOO_MANY_WAITS,
    /** A flow control of a reserved status, or cut short. */
    INVALID_FLOW_CONTROL
  }

  private enum State {
    FRESH,
    AWAITING_FLOW_CONTROL,
    SENDING,
    DONE,
    FAILED
  }

  private final byte[] message;
  private final long patienceNanos;
  private State state = State.FRESH;
  private Failure failure = Failure.NO_FLOW_CONTROL;
  private int sent;
  private int sequence = 1;
  private int leftInBlock;
  private int waits;
  private long separationNanos;
  private long nextNanoTime;

  /**
   * Prepares a message; nothing happens before {@link #next}.
   *
   * @param message 1 to 4095 bytes
   * @param patience how long to wait for a flow control (N_Bs); positive
   */
  public SegmentSender(Payload message, Duration patience) {
    if (message.size() < 1 || message.size() > LONGEST) {
      throw new IllegalArgumentException("A message has 1 to 4095 bytes, found " + message.size());
    }
    this.message = message.toBytes();
    this.patienceNanos = patience.toNanos();
  }

  /** The next step at this time. */
  public Step next(long nanoTime) {
    return switch (state) {
      case FRESH -> begin(nanoTime);
      case AWAITING_FLOW_CONTROL -> await(nanoTime);
      case SENDING -> proceed(nanoTime);
      case DONE -> new Step.Done();
      case FAILED -> new Step.Failed(failure);
    };
  }

  private Step begin(long nanoTime) {
    if (message.length <= MOST_IN_SINGLE) {
      state = State.DONE;
      return new Step.Send(frame(message.length, message.length, 1));
    }
    awaitFlowControl(nanoTime);
    Payload first = frame(FIRST | message.length >> 8, IN_FIRST, 2);
    byte[] withLength = first.toBytes();
    withLength[1] = (byte) message.length;
    return new Step.Send(Payload.of(withLength));
  }

  private Step await(long nanoTime) {
    if (nanoTime - nextNanoTime >= 0) {
      fail(Failure.NO_FLOW_CONTROL);
      return new Step.Failed(failure);
    }
    return new Step.Wait(nextNanoTime);
  }

  private Step proceed(long nanoTime) {
    if (nanoTime - nextNanoTime < 0) {
      return new Step.Wait(nextNanoTime);
    }
    int count = Math.min(MOST_IN_SINGLE, message.length - sent);
    Payload frame = frame(CONSECUTIVE | sequence, count, 1);
    sequence = (sequence + 1) % 16;
    nextNanoTime = nanoTime + separationNanos;
    if (sent == message.length) {
      state = State.DONE;
    } else if (--leftInBlock == 0) {
      awaitFlowControl(nanoTime);
    }
    return new Step.Send(frame);
  }

  /** Eight bytes: the first byte given, then the next part of the message from an index on. */
  private Payload frame(int firstByte, int count, int at) {
    byte[] bytes = new byte[CanFrame.MOST_BYTES];
    bytes[0] = (byte) firstByte;
    System.arraycopy(message, sent, bytes, at, count);
    sent += count;
    return Payload.of(bytes);
  }

  private void awaitFlowControl(long nanoTime) {
    state = State.AWAITING_FLOW_CONTROL;
    nextNanoTime = nanoTime + patienceNanos;
  }

  /**
   * Takes a frame of the receiver. Anything but a flow control that is waited for changes nothing.
   */
  public void accept(Payload bytes, long nanoTime) {
    boolean isInTime = state == State.AWAITING_FLOW_CONTROL && nanoTime - nextNanoTime < 0;
    if (!isInTime || !FlowControl.isOne(bytes)) {
      return;
    }
    Optional<FlowControl> flowControl = FlowControl.parse(bytes);
    if (flowControl.isEmpty()) {
      fail(Failure.INVALID_FLOW_CONTROL);
    } else {
      obey(flowControl.get(), nanoTime);
    }
  }

  private void obey(FlowControl flowControl, long nanoTime) {
    switch (flowControl.status()) {
      case CONTINUE -> {
        state = State.SENDING;
        waits = 0;
        leftInBlock = flowControl.blockSize();
        separationNanos = flowControl.separation().toNanos();
        nextNanoTime = nanoTime;
      }
      case WAIT -> {
        if (++waits > MOST_WAITS) {
          fail(Failure.TOO_MANY_WAITS);
        } else {
          awaitFlowControl(nanoTime);
        }
      }
      case OVERFLOW -> fail(Failure.OVERFLOW);
    }
  }

  private void fail(Failure reason) {
    state = State.FAILED;
    failure = reason;
  }
}
