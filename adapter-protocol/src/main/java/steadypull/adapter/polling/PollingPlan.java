package steadypull.adapter.polling;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * Decides which request comes next: the target that is latest against its due time, together with
 * others that are due or nearly so and make good use of the request. Targets that miss again and
 * again rest and are tried now and then.
 *
 * <p>When the link is too slow for all, everything becomes late by the same span. So the fast class
 * is stretched first and evenly, a class with a period longer than that span keeps its rate, and
 * nobody starves: a temperature that is some seconds old costs the driver more than a speed that
 * is.
 *
 * <p>Times are nanoseconds on the caller's clock. Used by one thread.
 */
public final class PollingPlan {
  /**
   * How long requests stay single after trouble with shared ones: damage on the way looks like a
   * control unit that cannot share, but passes (common practice, no source).
   */
  private static final Duration SINGLY = Duration.ofSeconds(30);

  private static final int PARAMETERS = 0x100;

  private final Pacing pacing;
  private final IntUnaryOperator answerLines;
  private final LinkCost cost = new LinkCost();
  private final Packer packer;
  private final PackShelf shelf = new PackShelf();
  private final List<PollItem> items = new ArrayList<>();
  private final @Nullable PollItem[] byParameter = new @Nullable PollItem[PARAMETERS];
  private final int[] numbers;
  private boolean singlyBegins;
  private boolean isSingly;
  private long singlyUntilNanoTime;
  private boolean hasAsked;
  private long lastNanoTime;

  /**
   * Makes an empty plan.
   *
   * @param answerLines how many lines carry an answer of so many payload bytes
   */
  public PollingPlan(Pacing pacing, IntUnaryOperator answerLines) {
    this.pacing = pacing;
    this.answerLines = answerLines;
    this.packer = new Packer(pacing.mostParameters(), answerLines, cost);
    this.numbers = new int[pacing.mostParameters()];
  }

  /**
   * Adds a target, due at once; one that is there already stays as it is.
   *
   * @param unit the control unit that answers; targets of the same one share requests
   */
  public void add(PollTarget target, Urgency urgency, String unit, long nowNanoTime) {
    if (find(target).isPresent()) {
      return;
    }
    boolean isAlwaysDue = pacing.fastIsAlwaysDue() && urgency == Urgency.FAST;
    long period = isAlwaysDue ? 0 : urgency.period().toNanos();
    PollItem item = new PollItem(target, urgency, period, unit, nowNanoTime);
    items.add(item);
    if (target instanceof PollTarget.Parameter(int number)) {
      byParameter[number] = item;
    }
  }

  /** Whether nothing is left to ask for. */
  public boolean isEmpty() {
    return items.isEmpty();
  }

  /** The next request; the plan takes it as sent now. */
  public PollRequest next(long nowNanoTime) {
    if (items.isEmpty()) {
      return new PollRequest.Wait(nowNanoTime + Urgency.SLOW.period().toNanos());
    }
    PollItem first = mostDue();
    long earliest = hasAsked ? lastNanoTime + pacing.leastGap().toNanos() : nowNanoTime;
    long wait = Math.max(earliest - nowNanoTime, first.dueNanoTime() - nowNanoTime);
    if (wait > 0) {
      return new PollRequest.Wait(nowNanoTime + wait);
    }
    hasAsked = true;
    lastNanoTime = nowNanoTime;
    return request(first, nowNanoTime);
  }

  private PollItem mostDue() {
    PollItem first = items.getFirst();
    for (int i = 1; i < items.size(); i++) {
      if (items.get(i).isBefore(first)) {
        first = items.get(i);
      }
    }
    return first;
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
    packer.clear();
    if (first.packs() && !asksSingly(nowNanoTime)) {
      for (int i = 0; i < items.size(); i++) {
        PollItem item = items.get(i);
        boolean isOther = !item.equals(first) && item.parameter() != 0;
        if (isOther && item.packsWith(first) && item.isNearlyDue(nowNanoTime)) {
          packer.offer(item);
        }
      }
    }
    int size = packer.choose(first);
    for (int i = 0; i < size; i++) {
      packer.chosen(i).asked(nowNanoTime);
      numbers[i] = packer.chosen(i).parameter();
    }
    return shelf.of(numbers, size);
  }

  /** Notes how long a request took that was answered in full, so that the next are packed well. */
  public void took(PollRequest.CurrentData request, long spanNanos) {
    int bytes = answerBytes(request);
    if (bytes > 0) {
      cost.took(answerLines.applyAsInt(bytes), spanNanos);
    }
  }

  /** Payload bytes of the answer to a request; 0 unless all lengths were learnt. */
  public int answerBytes(PollRequest.CurrentData request) {
    int bytes = 1;
    for (int i = 0; i < request.parameters().size(); i++) {
      PollItem item = byParameter[request.parameters().get(i)];
      if (item == null || item.length() == 0) {
        return 0;
      }
      bytes += 1 + item.length();
    }
    return bytes;
  }

  /** Notes that a target was answered. */
  public void answered(PollTarget target) {
    find(target).ifPresent(PollItem::answered);
  }

  /** Notes that a parameter was answered with so many data bytes. */
  public void answered(int parameter, int dataBytes) {
    PollItem item = byParameter[parameter];
    if (item != null) {
      item.answered();
      item.learnt(dataBytes);
    }
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

  /** Notes how many data bytes a target's answer has: it may share a request. */
  public void learnt(PollTarget target, int dataBytes) {
    find(target).ifPresent(item -> item.learnt(dataBytes));
  }

  /** Asks for every target alone for half a minute from the next request on, then tries again. */
  public void askSingly() {
    singlyBegins = true;
  }

  private boolean asksSingly(long nowNanoTime) {
    if (singlyBegins) {
      singlyUntilNanoTime = nowNanoTime + SINGLY.toNanos();
      singlyBegins = false;
      isSingly = true;
    }
    isSingly = isSingly && singlyUntilNanoTime - nowNanoTime > 0;
    return isSingly;
  }

  /** Never asks for a target again. */
  public void drop(PollTarget target) {
    items.removeIf(item -> item.target().equals(target));
    if (target instanceof PollTarget.Parameter(int number)) {
      byParameter[number] = null;
    }
  }

  private Optional<PollItem> find(PollTarget target) {
    return switch (target) {
      case PollTarget.Parameter(int number) -> Optional.ofNullable(byParameter[number]);
      case PollTarget.Identifier identifier ->
          items.stream().filter(item -> item.target().equals(identifier)).findFirst();
    };
  }
}
