package steadypull.adapter.capture;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Pattern;
import steadypull.adapter.capture.RecordedDialogue.Attempt;
import steadypull.adapter.capture.RecordedDialogue.Exchange;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;

/**
 * A capture as a port. It opens, refuses and is lost when the port then did, and answers a request
 * with what was answered to the same request at about the same time. One thread at a time.
 */
final class CaptureReplay implements LinkSource {
  /** A reader of another version asks a little sooner or later. */
  private static final long TOLERANCE_MICROS = 2_000_000;

  private final String address;
  private final RecordedDialogue dialogue;
  private final ReplayClock clock;

  /**
   * A vehicle that says nothing for so long does not answer; the slowest channels come every 10 s.
   */
  private static final long SILENCE_MICROS = 15_000_000;

  /** Bytes in hex, which only a vehicle says. */
  private static final Pattern VEHICLE = Pattern.compile("[0-9A-F]{6}");

  /** Service 01 but for its support maps, and identifiers that users define. */
  private static final Pattern MEASURED =
      Pattern.compile("01(?![02468ACE]0[1-9A-F]?\\r)|22(?!F[18])");

  private final NavigableSet<Long> heardMicros = new TreeSet<>();
  private final Map<String, List<Exchange>> byRequest = new HashMap<>();
  private final RecordedParameters parameters;
  private final Map<String, Integer> used = new HashMap<>();
  private int next;

  CaptureReplay(String address, RecordedDialogue dialogue, ReplayClock clock) {
    this.address = address;
    this.dialogue = dialogue;
    this.clock = clock;
    this.parameters =
        new RecordedParameters(
            dialogue.attempts().stream().flatMap(each -> each.exchanges().stream()).toList());
    for (Attempt attempt : dialogue.attempts()) {
      for (Exchange exchange : attempt.exchanges()) {
        byRequest.computeIfAbsent(exchange.request(), request -> new ArrayList<>()).add(exchange);
        if (isToVehicle(exchange.request()) && isAnswered(exchange)) {
          heardMicros.add(exchange.micros());
        }
      }
    }
  }

  @Override
  public String address() {
    return address;
  }

  @Override
  public LinkClock clock() {
    return clock;
  }

  /** The next try of the capture; one whose link still lasts is joined again. */
  @Override
  public Link open() throws LinkException {
    if (next > 0 && lasts(dialogue.attempts().get(next - 1))) {
      return new ReplayedLink(this, dialogue.attempts().get(next - 1), false);
    }
    while (next < dialogue.attempts().size()) {
      Attempt attempt = dialogue.attempts().get(next);
      next++;
      if (attempt.refusal().isPresent()) {
        clock.waitUntilMicros(attempt.micros());
        throw failure("open", "then it was refused: " + attempt.refusal().get());
      }
      if (lasts(attempt)) {
        clock.waitUntilMicros(attempt.micros());
        return new ReplayedLink(this, attempt, true);
      }
    }
    throw failure("open", "the capture ends here");
  }

  private boolean lasts(Attempt attempt) {
    return attempt.refusal().isEmpty() && clock.micros() < attempt.endMicros();
  }

  ReplayClock replayClock() {
    return clock;
  }

  private static boolean isToVehicle(String request) {
    return !request.isEmpty() && !request.toUpperCase(Locale.ROOT).startsWith("AT");
  }

  private static boolean isAnswered(Exchange exchange) {
    StringBuilder heard = new StringBuilder();
    exchange.heard().forEach(piece -> heard.append(piece.text().replace(" ", "")));
    return VEHICLE.matcher(heard).find();
  }

  /**
   * What was answered to a request at about this time; where that very request was not sent then,
   * what its parameters were told to be.
   *
   * @param header of the one control unit that is asked; empty text if all are
   */
  Optional<Exchange> answer(String request, String header) {
    Optional<Exchange> recorded = recorded(request);
    long now = clock.micros();
    boolean isNear =
        recorded.filter(each -> Math.abs(each.micros() - now) <= TOLERANCE_MICROS).isPresent();
    return isNear
        ? recorded
        : parameters
            .answer(request, header, now - SILENCE_MICROS, now + TOLERANCE_MICROS)
            .or(() -> recorded.filter(each -> isTrueNow(each, request)));
  }

  /** A command's answer always is; of a vehicle that has fallen silent nothing is heard. */
  private boolean isTrueNow(Exchange exchange, String request) {
    if (!isToVehicle(request) || !isAnswered(exchange)) {
      return true;
    }
    Long heard = heardMicros.floor(clock.micros() + TOLERANCE_MICROS);
    boolean isSilent = heard == null || heard < clock.micros() - SILENCE_MICROS;
    return !isSilent && isFresh(exchange, request);
  }

  /** Measured values are given again for a while only; what a vehicle is stays so. */
  private boolean isFresh(Exchange exchange, String request) {
    return !MEASURED.matcher(request).lookingAt()
        || exchange.micros() >= clock.micros() - SILENCE_MICROS;
  }

  /**
   * The next answer that was not given yet, unless it lies far ahead; then the last one once more.
   */
  private Optional<Exchange> recorded(String request) {
    List<Exchange> candidates = byRequest.getOrDefault(request, List.of());
    if (candidates.isEmpty()) {
      return Optional.empty();
    }
    int last = used.getOrDefault(request, -1);
    int chosen = last + 1;
    while (chosen + 1 < candidates.size()
        && candidates.get(chosen + 1).micros() <= clock.micros() - TOLERANCE_MICROS) {
      chosen++;
    }
    boolean isAhead =
        chosen >= candidates.size()
            || candidates.get(chosen).micros() > clock.micros() + TOLERANCE_MICROS;
    if (isAhead && last >= 0) {
      chosen = last;
    }
    used.put(request, chosen);
    return Optional.of(candidates.get(chosen));
  }

  LinkException failure(String attempt, String found) {
    return new LinkException(
        address, attempt, found, "This is a recording: nothing is wrong with this machine.", null);
  }
}
