package steadypull.adapter.capture;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A capture, put in order: tries to open the port, and what was said while it was open. All times
 * in microseconds since the capture began. Immutable once made.
 *
 * @param attempts in order
 * @param endMicros the last event
 */
record RecordedDialogue(List<Attempt> attempts, long endMicros) {
  RecordedDialogue {
    attempts = List.copyOf(attempts);
  }

  /**
   * A try to open the port.
   *
   * @param micros when it had worked or failed
   * @param refusal why it failed, if it did
   * @param exchanges what was said, if it worked
   * @param endMicros when the link ended
   * @param loss why it was lost; empty if it was closed or goes on to the end of the capture
   */
  record Attempt(
      long micros,
      Optional<String> refusal,
      List<Exchange> exchanges,
      long endMicros,
      Optional<String> loss) {}

  /**
   * Something that was sent, and all that was heard before the next.
   *
   * @param request empty for what was heard before anything was sent
   */
  record Exchange(long micros, String request, List<Piece> heard) {}

  /** Bytes that came together, as characters 0 to 255. */
  record Piece(long micros, String text) {}

  Duration lasts() {
    return Duration.ofNanos(endMicros * 1000);
  }

  /** Puts events, in order of time, together. Events outside an open link are passed over. */
  static RecordedDialogue of(List<CaptureEvent> events) {
    Builder builder = new Builder();
    events.forEach(builder::take);
    long end = events.isEmpty() ? 0 : events.getLast().micros();
    builder.end(end, Optional.empty());
    return new RecordedDialogue(builder.attempts, end);
  }

  private static final class Builder {
    final List<Attempt> attempts = new ArrayList<>();
    private final List<Exchange> exchanges = new ArrayList<>();
    private @Nullable CaptureEvent opened;

    void take(CaptureEvent event) {
      switch (event.kind()) {
        case OPENED -> {
          end(event.micros(), Optional.empty());
          opened = event;
          exchanges.add(new Exchange(event.micros(), "", new ArrayList<>()));
        }
        case REFUSED -> {
          end(event.micros(), Optional.empty());
          attempts.add(
              new Attempt(
                  event.micros(),
                  Optional.of(event.text()),
                  List.of(),
                  event.micros(),
                  Optional.empty()));
        }
        case SENT -> exchanges.add(new Exchange(event.micros(), event.text(), new ArrayList<>()));
        case HEARD -> {
          if (!exchanges.isEmpty()) {
            exchanges.getLast().heard().add(new Piece(event.micros(), event.text()));
          }
        }
        case LOST -> end(event.micros(), Optional.of(event.text()));
        case CLOSED -> end(event.micros(), Optional.empty());
      }
    }

    void end(long micros, Optional<String> loss) {
      CaptureEvent begun = opened;
      if (begun != null) {
        attempts.add(
            new Attempt(begun.micros(), Optional.empty(), List.copyOf(exchanges), micros, loss));
      }
      opened = null;
      exchanges.clear();
    }
  }
}
