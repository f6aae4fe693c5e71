package steadypull.adapter.frame;

import java.time.Duration;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;

/**
 * Receives the segmented messages of several senders at once, each in a buffer of its own (ISO
 * 15765-2). Times are nanoseconds on the caller's clock. Used by one thread.
 */
public final class SegmentReception {
  /** More senders at a time than any vehicle has (ISO 15765-4: eight control units). */
  private static final int MOST_SENDERS = 64;

  /** What a frame led to. A closed set. */
  public sealed interface Outcome {

    /** The sender's message is whole. */
    record Whole(Payload message) implements Outcome {}

    /** The sender waits for this flow control. */
    record Answer(FlowControl flowControl) implements Outcome {}

    /** Nothing is to be done; a message may be under way or just have been lost. */
    record Nothing() implements Outcome {}
  }

  private final Duration patience;
  private final Map<Integer, SegmentReceiver> receivers = new TreeMap<>();

  /**
   * Makes a reception for one reply.
   *
   * @param patience how long to wait for the next consecutive frame of a sender (N_Cr); positive
   */
  public SegmentReception(Duration patience) {
    this.patience = patience;
  }

  /** Takes a frame. */
  public Outcome accept(CanFrame frame, long nanoTime) {
    int sender = frame.isLong() ? ~frame.identifier() : frame.identifier();
    if (!receivers.containsKey(sender) && receivers.size() >= MOST_SENDERS) {
      return new Outcome.Nothing();
    }
    SegmentReceiver receiver =
        receivers.computeIfAbsent(sender, s -> new SegmentReceiver(patience));
    return switch (receiver.accept(frame.data(), nanoTime)) {
      case SegmentReceiver.Outcome.Whole(Payload message) -> new Outcome.Whole(message);
      case SegmentReceiver.Outcome.Answer(FlowControl answer) -> new Outcome.Answer(answer);
      case SegmentReceiver.Outcome.Taken taken -> new Outcome.Nothing();
      case SegmentReceiver.Outcome.Broken broken -> new Outcome.Nothing();
      case SegmentReceiver.Outcome.Ignored ignored -> new Outcome.Nothing();
    };
  }

  /** Until when at most a message that is under way may need, or empty if none is. */
  public OptionalLong deadlineNanoTime(long nanoTime) {
    return receivers.values().stream()
        .flatMapToLong(receiver -> receiver.deadlineNanoTime(nanoTime).stream())
        .reduce((a, b) -> a - b > 0 ? a : b);
  }

  /** Forgets what is under way: a new request begins. */
  public void clear() {
    receivers.clear();
  }
}
