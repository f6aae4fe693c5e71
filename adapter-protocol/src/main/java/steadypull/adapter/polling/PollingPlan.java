package steadypull.adapter.polling;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Decides which request comes next: the target that has been due longest, together with others that
 * are due or nearly so, as far as one request holds them. Targets that miss again and again are
 * asked less often. Times are nanoseconds on the caller's clock. Used by one thread.
 */
public final class PollingPlan {
  /**
   * How long requests stay single after trouble with shared ones: damage on the way looks like a
   * control unit that cannot share, but passes (common practice, no source).
   */
  private static final Duration SINGLY = Duration.ofSeconds(30);

  private final Pacing pacing;
  private final Map<PollTarget, PollItem> items = new LinkedHashMap<>();
  private boolean singlyBegins;
  private Optional<Long> singlyUntil = Optional.empty();
  private Optional<Long> lastRequest = Optional.empty();

  public PollingPlan(Pacing pacing) {
    this.pacing = pacing;
  }

  /**
   * Adds a target, due at once; one that is there already stays as it is.
   *
   * @param packs whether it may share a request, because its length is known
   */
  public void add(PollTarget target, Urgency urgency, boolean packs, long nowNanoTime) {
    boolean isAlwaysDue = pacing.fastIsAlwaysDue() && urgency == Urgency.FAST;
    long period = isAlwaysDue ? 0 : urgency.period().toNanos();
    items.putIfAbsent(target, new PollItem(target, urgency, period, packs, nowNanoTime));
  }

  /** Whether nothing is left to ask for. */
  public boolean isEmpty() {
    return items.isEmpty();
  }

  /** The next request; the plan takes it as sent now. */
  public PollRequest next(long nowNanoTime) {
    long earliest = lastRequest.map(last -> last + pacing.leastGap().toNanos()).orElse(nowNanoTime);
    Optional<PollItem> first =
        items.values().stream()
            .min(
                Comparator.comparingLong((PollItem item) -> item.dueNanoTime() - nowNanoTime)
                    .thenComparing(PollItem::urgency));
    if (first.isEmpty()) {
      return new PollRequest.Wait(nowNanoTime + Urgency.SLOW.period().toNanos());
    }
    long due = Math.max(earliest, first.get().dueNanoTime());
    if (due - nowNanoTime > 0) {
      return new PollRequest.Wait(due);
    }
    lastRequest = Optional.of(nowNanoTime);
    return request(first.get(), nowNanoTime);
  }

  private PollRequest request(PollItem first, long nowNanoTime) {
    return switch (first.target()) {
      case PollTarget.Identifier identifier -> {
        first.asked(nowNanoTime);
        yield new PollRequest.Identified(identifier);
      }
      case PollTarget.Parameter parameter -> packed(first, nowNanoTime);
    };
  }

  private PollRequest packed(PollItem first, long nowNanoTime) {
    List<PollItem> together = new ArrayList<>(List.of(first));
    if (first.packs() && !asksSingly(nowNanoTime)) {
      items.values().stream()
          .filter(item -> item != first && item.packs())
          .filter(item -> item.target() instanceof PollTarget.Parameter)
          .filter(item -> item.isNearlyDue(nowNanoTime))
          .sorted(Comparator.comparingLong(item -> item.dueNanoTime() - nowNanoTime))
          .limit(pacing.mostParameters() - 1L)
          .forEach(together::add);
    }
    List<Integer> numbers = new ArrayList<>();
    for (PollItem item : together) {
      item.asked(nowNanoTime);
      if (item.target() instanceof PollTarget.Parameter(int number)) {
        numbers.add(number);
      }
    }
    return new PollRequest.CurrentData(numbers);
  }

  /** Notes that a target was answered. */
  public void answered(PollTarget target) {
    find(target).ifPresent(PollItem::answered);
  }

  /**
   * Notes that a target was asked for and did not come.
   *
   * @return how many times in a row; zero if the target is unknown
   */
  public int missed(PollTarget target) {
    return find(target).map(PollItem::missed).orElse(0);
  }

  /** Asks for a target again after a span and not before. */
  public void postpone(PollTarget target, Duration span, long nowNanoTime) {
    find(target).ifPresent(item -> item.postpone(nowNanoTime + span.toNanos()));
  }

  /** Notes that a target's length is known now: it may share a request. */
  public void learnt(PollTarget target) {
    find(target).ifPresent(PollItem::learnt);
  }

  /** Asks for every target alone for half a minute from the next request on, then tries again. */
  public void askSingly() {
    singlyBegins = true;
  }

  private boolean asksSingly(long nowNanoTime) {
    if (singlyBegins) {
      singlyUntil = Optional.of(nowNanoTime + SINGLY.toNanos());
      singlyBegins = false;
    }
    return singlyUntil.filter(until -> until - nowNanoTime > 0).isPresent();
  }

  /** Never asks for a target again. */
  public void drop(PollTarget target) {
    items.remove(target);
  }

  private Optional<PollItem> find(PollTarget target) {
    return Optional.ofNullable(items.get(target));
  }
}
