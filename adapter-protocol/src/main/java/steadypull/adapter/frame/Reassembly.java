package steadypull.adapter.frame;

import java.io.ByteArrayOutputStream;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Puts ISO 15765-2 segments together, one buffer per identifier. Lives as long as one reply, so a
 * message that is never completed disappears with it. Used by one thread.
 */
final class Reassembly {
  private final Map<String, Unfinished> unfinished = new HashMap<>();

  /** Takes the next frame; gives a message when it is complete. */
  Optional<Message> accept(CanLine line) {
    String sender = line.identifier();
    return switch (line.segment()) {
      case Segment.Single single -> {
        unfinished.remove(sender);
        yield Optional.of(new Message(sender, single.payload()));
      }
      case Segment.First first -> {
        unfinished.put(sender, new Unfinished(first));
        yield Optional.empty();
      }
      case Segment.Consecutive next -> proceed(sender, next);
      case Segment.FlowControl flow -> Optional.empty();
      case Segment.Malformed malformed -> {
        unfinished.remove(sender);
        yield Optional.empty();
      }
    };
  }

  private Optional<Message> proceed(String sender, Segment.Consecutive next) {
    Unfinished message = unfinished.get(sender);
    if (message == null) {
      return Optional.empty();
    }
    if (!message.append(next)) {
      unfinished.remove(sender);
      return Optional.empty();
    }
    if (!message.isComplete()) {
      return Optional.empty();
    }
    unfinished.remove(sender);
    return Optional.of(new Message(sender, message.payload()));
  }

  /** A message whose length is known and whose end is still to come. */
  private static final class Unfinished {
    private final int length;
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private int expectedSequence = 1;

    Unfinished(Segment.First first) {
      length = first.length();
      bytes.writeBytes(first.payload().toBytes());
    }

    /** Takes the next segment; false if it is not the next or too short for what is missing. */
    boolean append(Segment.Consecutive next) {
      int missing = Math.min(length - bytes.size(), Segment.MOST_IN_SINGLE);
      if (next.sequence() != expectedSequence || next.payload().size() < missing) {
        return false;
      }
      bytes.writeBytes(next.payload().slice(0, missing).toBytes());
      expectedSequence = (expectedSequence + 1) % 16;
      return true;
    }

    boolean isComplete() {
      return bytes.size() == length;
    }

    Payload payload() {
      return Payload.of(bytes.toByteArray());
    }
  }
}
