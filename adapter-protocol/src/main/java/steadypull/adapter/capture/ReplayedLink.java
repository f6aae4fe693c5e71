package steadypull.adapter.capture;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import steadypull.adapter.capture.RecordedDialogue.Attempt;
import steadypull.adapter.capture.RecordedDialogue.Exchange;
import steadypull.adapter.capture.RecordedDialogue.Piece;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkException;

/**
 * An open link of a capture. To a request that was never asked then, it says what an adapter says
 * that has nothing to tell: {@code NO DATA}, or {@code ?} to a command. One thread at a time.
 */
final class ReplayedLink implements Link {
  private static final long USUAL_MICROS = 20_000;

  private final CaptureReplay replay;
  private final Attempt attempt;
  private final Deque<Piece> coming = new ArrayDeque<>();

  /**
   * Opens.
   *
   * @param isFresh whether what was heard before the first request is still to come
   */
  ReplayedLink(CaptureReplay replay, Attempt attempt, boolean isFresh) {
    this.replay = replay;
    this.attempt = attempt;
    if (isFresh) {
      coming.addAll(attempt.exchanges().getFirst().heard());
    }
  }

  @Override
  public String address() {
    return replay.address();
  }

  @Override
  public void write(byte[] bytes) throws LinkException {
    requireOpen("send to");
    String request = new String(bytes, StandardCharsets.ISO_8859_1);
    long now = now();
    coming.clear();
    coming.addAll(
        replay
            .answer(request)
            .map(exchange -> shifted(exchange, now))
            .orElseGet(() -> List.of(new Piece(now + USUAL_MICROS, nothing(request)))));
  }

  /** The answer takes as long as it took then. */
  private static List<Piece> shifted(Exchange exchange, long now) {
    return exchange.heard().stream()
        .map(piece -> new Piece(piece.micros() - exchange.micros() + now, piece.text()))
        .toList();
  }

  private static String nothing(String request) {
    boolean isCommand = request.toUpperCase(Locale.ROOT).startsWith("AT");
    return isCommand ? "?\r\r>" : "NO DATA\r\r>";
  }

  @Override
  public byte[] read(Duration patience) throws LinkException {
    requireOpen("read from");
    // Rounded up: who waits ever so little gets on.
    long deadline = Math.min(now() + (patience.toNanos() + 999) / 1000, attempt.endMicros());
    Piece first = coming.peek();
    if (first == null || first.micros() > deadline) {
      replay.replayClock().waitUntilMicros(deadline);
      requireOpen("read from");
      return new byte[0];
    }
    replay.replayClock().waitUntilMicros(first.micros());
    coming.remove();
    return first.text().getBytes(StandardCharsets.ISO_8859_1);
  }

  private long now() {
    return replay.replayClock().micros();
  }

  private void requireOpen(String tried) throws LinkException {
    if (now() >= attempt.endMicros()) {
      throw replay.failure(
          tried,
          attempt
              .loss()
              .map(reason -> "then the link was lost: " + reason)
              .orElse("the recorded link ends here"));
    }
  }

  @Override
  public void close() {
    coming.clear();
  }
}
