package steadypull.adapter.frame;

import java.time.Duration;
import java.util.OptionalLong;

/**
 * The receiving side of ISO 15765-2 for one sender, normal addressing: frames go in, whole messages
 * and the flow control that is due come out. Times are nanoseconds on the caller's clock. Used by
 * one thread.
 */
final class SegmentReceiver {
  private static final int SINGLE = 0x0;
  private static final int FIRST = 0x1;
  private static final int CONSECUTIVE = 0x2;
  private static final int MOST_IN_SINGLE = 7;
  private static final int IN_FIRST = 6;

  /** What a frame led to. A closed set. */
  sealed interface Outcome {

    /** A message is whole. */
    record Whole(Payload message) implements Outcome {}

    /** A longer message begins or is refused; its sender waits for this flow control. */
    record Answer(FlowControl flowControl) implements Outcome {}

    /** A part was taken; more is to come. */
    record Taken() implements Outcome {}

    /** The message that was under way is lost: a part is missing, repeated or too short. */
    record Broken() implements Outcome {}

    /** The frame means nothing to a receiver at this moment. */
    record Ignored() implements Outcome {}
  }

  private final long patienceNanos;
  private byte[] message = {};
  private int filled;
  private int expectedSequence;
  private boolean isUnderWay;
  private long deadlineNanoTime;

  /**
   * Makes a receiver.
   *
   * @param patience how long to wait for the next consecutive frame (N_Cr); positive
   */
  SegmentReceiver(Duration patience) {
    this.patienceNanos = patience.toNanos();
  }

  /** Takes the bytes of a frame, filler included. */
  Outcome accept(Payload bytes, long nanoTime) {
    giveUpIfOverdue(nanoTime);
    if (bytes.size() == 0) {
      return new Outcome.Ignored();
    }
    int low = bytes.at(0) & 0x0F;
    return switch (bytes.at(0) >> 4) {
      case SINGLE -> single(bytes, low);
      case FIRST -> first(bytes, low, nanoTime);
      case CONSECUTIVE -> consecutive(bytes, low, nanoTime);
      default -> new Outcome.Ignored();
    };
  }

  /** 0L: ends whatever was under way, as every sound single or first frame does. */
  private Outcome single(Payload bytes, int length) {
    if (length < 1 || length > MOST_IN_SINGLE || length >= bytes.size()) {
      return new Outcome.Ignored();
    }
    isUnderWay = false;
    return new Outcome.Whole(bytes.slice(1, 1 + length));
  }

  /** 1h ll: length 8 to 4095; length 0 announces a longer one in four bytes more. */
  private Outcome first(Payload bytes, int lengthHigh, long nanoTime) {
    if (bytes.size() != CanFrame.MOST_BYTES) {
      return new Outcome.Ignored();
    }
    int length = (lengthHigh << 8) | bytes.at(1);
    if (length == 0) {
      isUnderWay = false;
      return new Outcome.Answer(FlowControl.TOO_LONG);
    }
    if (length <= MOST_IN_SINGLE) {
      return new Outcome.Ignored();
    }
    message = new byte[length];
    filled = 0;
    fill(bytes, 2, IN_FIRST);
    expectedSequence = 1;
    isUnderWay = true;
    deadlineNanoTime = nanoTime + patienceNanos;
    return new Outcome.Answer(FlowControl.ALL_AT_ONCE);
  }

  /** 2n: n counts 1 to F, 0, 1 and so on. */
  private Outcome consecutive(Payload bytes, int sequence, long nanoTime) {
    if (!isUnderWay) {
      return new Outcome.Ignored();
    }
    int missing = Math.min(message.length - filled, MOST_IN_SINGLE);
    if (sequence != expectedSequence || bytes.size() - 1 < missing) {
      isUnderWay = false;
      return new Outcome.Broken();
    }
    fill(bytes, 1, missing);
    expectedSequence = (expectedSequence + 1) % 16;
    deadlineNanoTime = nanoTime + patienceNanos;
    if (filled < message.length) {
      return new Outcome.Taken();
    }
    isUnderWay = false;
    return new Outcome.Whole(Payload.of(message));
  }

  private void fill(Payload bytes, int from, int count) {
    for (int i = 0; i < count; i++) {
      message[filled++] = (byte) bytes.at(from + i);
    }
  }

  /** When the next part is overdue, or empty while no message is under way. */
  OptionalLong deadlineNanoTime(long nanoTime) {
    giveUpIfOverdue(nanoTime);
    return isUnderWay ? OptionalLong.of(deadlineNanoTime) : OptionalLong.empty();
  }

  private void giveUpIfOverdue(long nanoTime) {
    isUnderWay = isUnderWay && nanoTime - deadlineNanoTime <= 0;
  }
}
