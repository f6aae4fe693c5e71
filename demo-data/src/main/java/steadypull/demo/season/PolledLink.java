package steadypull.demo.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;

/**
 * When the answers of a link arrive. One request is under way at a time, at most twenty a second;
 * whatever is most overdue goes next. A link too slow for its plan stretches it. One thread at a
 * time; times in microseconds since the first answer.
 */
final class PolledLink {
  private static final long LEAST_BETWEEN_REQUESTS = 50_000;
  private static final long LINE_MICROS = 900; // on the wire and through the adapter, estimated
  private static final double HICCUP_SHARE = 0.004; // the tablet was busy (estimated)
  private static final long HICCUP_MICROS = 30_000;

  private final VehicleBus bus;
  private final Random random;
  private final List<Turn> turns = new ArrayList<>();
  private Turn next;
  private long sent;
  private long arrival;

  PolledLink(VehicleBus bus, List<PolledAnswer> answers, Random random) {
    this.bus = bus;
    this.random = random;
    answers.forEach(answer -> turns.add(new Turn(answer)));
    next = turns.getFirst();
    next.due += next.answer.periodMicros();
  }

  /** When the next answer arrives. */
  long arrival() {
    return arrival;
  }

  /** What it brings. */
  PolledAnswer answer() {
    return next.answer;
  }

  /** Goes on to the request after it. */
  void proceed() {
    next = turns.stream().min(Comparator.comparingLong(turn -> turn.due)).orElseThrow();
    sent = Math.max(Math.max(next.due, sent + LEAST_BETWEEN_REQUESTS), arrival);
    next.due = Math.max(next.due, sent - next.answer.periodMicros()) + next.answer.periodMicros();
    arrival = sent + answerTakes();
  }

  /** Nothing is asked until a time. */
  void pauseUntil(long micros) {
    for (Turn turn : turns) {
      turn.due = Math.max(turn.due, micros);
    }
    sent = micros;
    arrival = micros;
    proceed();
  }

  private long answerTakes() {
    double jitter = Math.abs(random.nextGaussian()) * bus.jitterMicros();
    long hiccup = random.nextDouble() < HICCUP_SHARE ? HICCUP_MICROS : 0;
    return bus.answerMicros() + next.answer.lines() * LINE_MICROS + (long) jitter + hiccup;
  }

  /** An answer and when it is asked for again. */
  private static final class Turn {
    private final PolledAnswer answer;
    private long due;

    Turn(PolledAnswer answer) {
      this.answer = answer;
    }
  }
}
