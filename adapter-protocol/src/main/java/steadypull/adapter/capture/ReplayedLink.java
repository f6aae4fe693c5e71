package steadypull.adapter.capture;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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

  private static final Pattern SET_HEADER = Pattern.compile("ATSH([0-9A-F]{3}|[0-9A-F]{6})\r");

  /** ISO 15765-4, functional requests. */
  private static final Set<String> EVERYBODY = Set.of("7DF", "18DB33F1");

  private static final Set<String> RESETS = Set.of("ATZ", "ATWS", "ATD");

  private final CaptureReplay replay;
  private final Attempt attempt;
  private final Deque<Piece> coming = new ArrayDeque<>();
  private String header = "";

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
    noteHeader(request);
    coming.clear();
    coming.addAll(
        replay
            .answer(request, header)
            .map(exchange -> shifted(exchange, now))
            .orElseGet(() -> List.of(new Piece(now + USUAL_MICROS, nothing(request)))));
  }

  /** A control unit is addressed until all are again, or the adapter starts anew. */
  private void noteHeader(String request) {
    Matcher set = SET_HEADER.matcher(request.replace(" ", "").toUpperCase(Locale.ROOT));
    if (set.matches()) {
      String given = set.group(1).length() == 6 ? "18" + set.group(1) : set.group(1);
      header = EVERYBODY.contains(given) ? "" : given;
    } else if (RESETS.contains(request.strip().toUpperCase(Locale.ROOT))) {
      header = "";
    }
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
