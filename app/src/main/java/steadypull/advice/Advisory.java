package steadypull.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import steadypull.channel.Channel;
import steadypull.thermal.Derate;

/**
 * Everything that rules with one cause have to say, as one advisory with one life cycle. Its lead
 * is the worst rule raised; the others join silently.
 */
final class Advisory {
  private static final double LONGEST_SNOOZE_SECONDS = 180;
  private static final double SHORTEST_SNOOZE_SECONDS = 5;

  /** How long it says that all is well again. */
  private static final long RETURNED_MICROS = 60_000_000;

  /** Another channel takes the lead within a rank only if it is this much sooner (own choice). */
  private static final double SOONER_SECONDS = 15;

  /** As far as forecasts reach. */
  private static final double NEVER_SECONDS = 600;

  private final List<RuleWatch> members;
  private final StandingRemedy remedy;
  private final ChatterGuard guard = new ChatterGuard();
  private final FirstOut firstOut = new FirstOut();
  private final AdviceOutcome outcome = new AdviceOutcome();
  private AdvisoryState state = new AdvisoryState.Normal();
  private Optional<RuleWatch> lead = Optional.empty();
  private double secondsDerated;
  private boolean hasBeenOver;
  private long steppedMicros;

  Advisory(List<RuleWatch> members, RemedySearch search) {
    this.members = List.copyOf(members);
    remedy = new StandingRemedy(search);
  }

  /** A change of the life cycle and the rule behind it. */
  record Transition(AdviceEvent.Kind kind, RuleWatch rule) {}

  AdvisoryState state() {
    return state;
  }

  /** The worst rule raised; after the return, the one that led last. */
  Optional<RuleWatch> lead() {
    return lead;
  }

  Optional<Remedy> remedy() {
    return remedy.remedy();
  }

  List<RuleWatch> members() {
    return members;
  }

  /** Seconds of derating since it was raised. */
  double secondsDerated() {
    return secondsDerated;
  }

  /** Whether its channel was over the limit or derating since it was raised. */
  boolean hasBeenOver() {
    return hasBeenOver;
  }

  /** The channel that was first, where others have joined it since it was raised. */
  Optional<Channel> firstOut() {
    return firstOut.ofSeveral();
  }

  boolean isActive() {
    return switch (state) {
      case AdvisoryState.Normal _, AdvisoryState.Returned _, AdvisoryState.Suppressed _ -> false;
      case AdvisoryState.Unacknowledged _, AdvisoryState.Acknowledged _, AdvisoryState.Shelved _ ->
          true;
    };
  }

  /** Whether there is something to say about it. */
  boolean isSaid() {
    return isActive() || state instanceof AdvisoryState.Returned;
  }

  /** Whether it stands only because it came and went before. */
  boolean isHeld() {
    return isActive() && members.stream().noneMatch(RuleWatch::isRaised);
  }

  /** Moves on after its members have. */
  List<Transition> step(SituationFacts facts) {
    List<RuleWatch> raised = members.stream().filter(RuleWatch::isRaised).toList();
    List<Transition> transitions = new ArrayList<>();
    if (raised.isEmpty() && members.stream().allMatch(RuleWatch::isSuppressed)) {
      transitions.addAll(suppress(facts.timeMicros()));
    } else if (raised.isEmpty()) {
      transitions.addAll(clear(facts.timeMicros()));
    } else {
      stand(facts, raised, transitions);
    }
    steppedMicros = facts.timeMicros();
    return transitions;
  }

  private void stand(SituationFacts facts, List<RuleWatch> raised, List<Transition> transitions) {
    Optional<RuleWatch> before = isActive() ? lead : Optional.empty();
    RuleWatch worst = worst(raised, before, facts);
    lead = Optional.of(worst);
    hold(before, worst, facts).ifPresent(transitions::add);
    firstOut
        .joining(raised)
        .forEach(each -> transitions.add(new Transition(AdviceEvent.Kind.JOINED, each)));
    guard.hasReason(facts.timeMicros());
    count(facts, before.isEmpty());
    remedyFor(facts, raised, before, worst);
    follow(facts).ifPresent(transitions::add);
  }

  private List<Transition> clear(long now) {
    if (isActive() && guard.isHeld(now)) {
      return List.of();
    }
    if (isActive()) {
      guard.cleared(now);
      end(now);
      return ended();
    }
    if (state instanceof AdvisoryState.Suppressed
        || (state instanceof AdvisoryState.Returned(long since)
            && now - since >= RETURNED_MICROS)) {
      leave();
    }
    return List.of();
  }

  /** That it is over, and before that what became of its advice. */
  private List<Transition> ended() {
    RuleWatch rule = lead.orElseThrow();
    List<Transition> ended = new ArrayList<>();
    outcome.end().ifPresent(kind -> ended.add(new Transition(kind, rule)));
    ended.add(new Transition(AdviceEvent.Kind.CLEARED, rule));
    outcome.begins();
    return ended;
  }

  /** Only what asked for easing has a return worth saying. */
  private void end(long now) {
    if (lead.filter(Advisory::isAsking).isPresent()) {
      state = new AdvisoryState.Returned(now);
    } else {
      leave();
    }
  }

  private void leave() {
    state = new AdvisoryState.Normal();
    remedy.drop();
  }

  /** Ends it at once because it does not apply now, by design; nothing is said afterwards. */
  List<Transition> suppress(long now) {
    members.forEach(RuleWatch::suppress);
    boolean wasActive = isActive();
    if (!(state instanceof AdvisoryState.Suppressed)) {
      leave();
      state = new AdvisoryState.Suppressed(now);
    }
    if (!wasActive || lead.isEmpty()) {
      return List.of();
    }
    guard.cleared(now);
    List<Transition> ended = ended();
    ended.add(new Transition(AdviceEvent.Kind.SUPPRESSED, lead.get()));
    return ended;
  }

  private Optional<Transition> hold(
      Optional<RuleWatch> before, RuleWatch worst, SituationFacts facts) {
    if (before.isEmpty()) {
      state = new AdvisoryState.Unacknowledged();
      remedy.drop();
      guard.raised(facts.timeMicros());
      firstOut.begins(worst);
      outcome.begins();
      return Optional.of(new Transition(AdviceEvent.Kind.RAISED, worst));
    }
    int change = worst.rule().level().compareTo(before.get().rule().level());
    if (change > 0) {
      state = new AdvisoryState.Unacknowledged();
      return Optional.of(new Transition(AdviceEvent.Kind.ESCALATED, worst));
    }
    if (change < 0) {
      return Optional.of(new Transition(AdviceEvent.Kind.EASED, worst));
    }
    return unshelveIfDue(worst, facts.timeMicros());
  }

  private Optional<Transition> unshelveIfDue(RuleWatch worst, long now) {
    if (state instanceof AdvisoryState.Shelved(long until, Urgency urgency)
        && (now >= until || worst.urgency().isWorseThan(urgency))) {
      return show();
    }
    return Optional.empty();
  }

  private void count(SituationFacts facts, boolean isNew) {
    if (isNew) {
      secondsDerated = 0;
      hasBeenOver = false;
      steppedMicros = facts.timeMicros();
    }
    if (facts.situation().derate() instanceof Derate.Active) {
      secondsDerated += (facts.timeMicros() - steppedMicros) / 1e6;
      hasBeenOver = true;
    }
    hasBeenOver |= leadFacts(facts).map(ChannelFacts::isOverLimit).orElse(false);
  }

  private void remedyFor(
      SituationFacts facts, List<RuleWatch> raised, Optional<RuleWatch> before, RuleWatch worst) {
    if (worst.rule().advise() != Answer.EASE || worst.channel().isEmpty()) {
      return;
    }
    Set<Channel> channels =
        raised.stream().flatMap(each -> each.channel().stream()).collect(Collectors.toSet());
    boolean isWorse =
        before.map(each -> worst.rule().level().compareTo(each.rule().level()) > 0).orElse(true);
    remedy.update(facts, channels, raised.stream().anyMatch(RuleWatch::isPressing), isWorse);
  }

  /** A driver who does what is asked has understood it. */
  private Optional<Transition> follow(SituationFacts facts) {
    boolean isDone = remedy.isFollowed(facts);
    if (lead.filter(Advisory::isAsking).isPresent() && remedy.remedy().isPresent()) {
      outcome.step(facts, isDone, leadFacts(facts));
    }
    return isDone && state instanceof AdvisoryState.Unacknowledged
        ? acknowledge(facts.timeMicros())
        : Optional.empty();
  }

  private static boolean isAsking(RuleWatch watch) {
    return watch.rule().advise() == Answer.EASE && watch.rule().level() != Level.NOTICE;
  }

  private RuleWatch worst(
      List<RuleWatch> raised, Optional<RuleWatch> before, SituationFacts facts) {
    Comparator<RuleWatch> byRank = Comparator.comparing(RuleWatch::urgency);
    return raised.stream()
        .min(byRank.thenComparingDouble(each -> secondsLeft(each, before, facts)))
        .orElseThrow();
  }

  private static double secondsLeft(
      RuleWatch watch, Optional<RuleWatch> before, SituationFacts facts) {
    double keepsLead =
        before.flatMap(RuleWatch::channel).equals(watch.channel()) ? SOONER_SECONDS : 0;
    return watch.channel().flatMap(facts::of).map(Advisory::secondsLeft).orElse(NEVER_SECONDS)
        - keepsLead;
  }

  /**
   * Median seconds to the limit; what most likely never reaches it comes later, the likeliest
   * first.
   */
  private static double secondsLeft(ChannelFacts facts) {
    return facts.secondsToLimit().orElse(NEVER_SECONDS * (2 - facts.probabilityInTime().orElse(0)));
  }

  Optional<ChannelFacts> leadFacts(SituationFacts facts) {
    return lead.flatMap(RuleWatch::channel).flatMap(facts::of);
  }

  /** The driver has understood; a message of return is dismissed. */
  Optional<Transition> acknowledge(long now) {
    if (state instanceof AdvisoryState.Returned) {
      leave();
      return Optional.empty();
    }
    if (!(state instanceof AdvisoryState.Unacknowledged)) {
      return Optional.empty();
    }
    state = new AdvisoryState.Acknowledged(now);
    return lead.map(each -> new Transition(AdviceEvent.Kind.ACKNOWLEDGED, each));
  }

  /** Puts it aside, unless it is a warning or there is no time for that. */
  Optional<Transition> snooze(long now, SituationFacts facts) {
    OptionalDouble seconds = snoozeSeconds(facts);
    if (seconds.isEmpty()) {
      return Optional.empty();
    }
    RuleWatch rule = lead.orElseThrow();
    state =
        new AdvisoryState.Shelved(now + Math.round(seconds.getAsDouble() * 1e6), rule.urgency());
    return Optional.of(new Transition(AdviceEvent.Kind.SHELVED, rule));
  }

  /**
   * For how long it could be put aside: 3 min, but never more than half the time that is left;
   * empty for anything but a caution that is open, and where there is no time for that.
   */
  OptionalDouble snoozeSeconds(SituationFacts facts) {
    boolean isOpen =
        state instanceof AdvisoryState.Unacknowledged
            || state instanceof AdvisoryState.Acknowledged;
    boolean isCaution = lead.filter(each -> each.rule().level() == Level.CAUTION).isPresent();
    double left =
        leadFacts(facts)
            .map(ChannelFacts::secondsToLimit)
            .orElse(OptionalDouble.empty())
            .orElse(Double.POSITIVE_INFINITY);
    double seconds = Math.min(LONGEST_SNOOZE_SECONDS, left / 2);
    return isOpen && isCaution && seconds >= SHORTEST_SNOOZE_SECONDS
        ? OptionalDouble.of(seconds)
        : OptionalDouble.empty();
  }

  /** Brings it back from the shelf. */
  Optional<Transition> show() {
    if (!(state instanceof AdvisoryState.Shelved)) {
      return Optional.empty();
    }
    state = new AdvisoryState.Unacknowledged();
    return lead.map(each -> new Transition(AdviceEvent.Kind.UNSHELVED, each));
  }
}
