package steadypull.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.vehicle.Vehicle;

/**
 * Judges a drive second by second and says what to do. A reducer: the same situations and answers
 * give the same events and lines. One thread, with the model behind {@link Situation#under}.
 */
public final class Advisor {
  private final Vehicle vehicle;
  private final Locale locale;
  private final RemedySearch search;
  private AdviceWords words;
  private LineComposer composer;
  private final List<RuleWatch> watches;
  private List<Out> outOfService;
  private final List<Advisory> advisories;
  private final DerateRecord derates = new DerateRecord();
  private final DriveHistory history = new DriveHistory();
  private Optional<SituationFacts> latest = Optional.empty();
  private AdviceLine line;

  /**
   * An advisor at the start of a trip.
   *
   * @param vehicle limits and advisable speeds
   * @param rules compiled rules
   * @param locale language of the texts; English where there is no translation
   * @param units units that the driver reads
   */
  public Advisor(Vehicle vehicle, RuleSet rules, Locale locale, UnitSystem units) {
    this.vehicle = vehicle;
    this.locale = locale;
    search = new RemedySearch(vehicle.speeds(), units);
    words = new AdviceWords(locale, new QuantityFormat(locale, units));
    composer = new LineComposer(words);
    List<RuleWatch> all = rules.rules().stream().flatMap(Advisor::watches).toList();
    watches =
        all.stream()
            .filter(each -> rules.outOfService(each).isEmpty())
            .collect(Collectors.toCollection(ArrayList::new));
    outOfService =
        all.stream()
            .flatMap(
                each ->
                    rules.outOfService(each).stream()
                        .map(why -> new Out(each.ruleId(), why.reason())))
            .toList();
    advisories = advisories();
    line = composer.waiting();
  }

  /** A rule that takes part in nothing, and why. */
  private record Out(String rule, String reason) {}

  private static Stream<RuleWatch> watches(Rule rule) {
    return rule.watch().isEmpty()
        ? Stream.of(new RuleWatch(rule, Optional.empty()))
        : rule.watch().stream().map(each -> new RuleWatch(rule, Optional.of(each)));
  }

  private List<Advisory> advisories() {
    Map<String, List<RuleWatch>> byCause =
        watches.stream()
            .collect(
                Collectors.groupingBy(
                    each -> each.rule().cause(), LinkedHashMap::new, Collectors.toList()));
    return byCause.values().stream().map(each -> new Advisory(each, search)).toList();
  }

  /**
   * Speaks in other units from now on. A speed that is being advised stays and is said in the new
   * units; the next one is round in them.
   */
  public void speakIn(UnitSystem units) {
    words = new AdviceWords(locale, new QuantityFormat(locale, units));
    composer = new LineComposer(words);
    search.roundIn(units);
    line = latest.map(facts -> composer.line(top(), facts)).orElseGet(composer::waiting);
  }

  /**
   * Takes the situation of the next second.
   *
   * @param situation later than the one before
   * @return what happened, in order; often empty
   */
  public List<AdviceEvent> step(Situation situation) {
    SituationFacts facts = new SituationFacts(vehicle, situation, history);
    history.step(facts);
    latest = Optional.of(facts);
    List<AdviceEvent> events = new ArrayList<>(tellOutOfService(situation.timeMicros()));
    events.addAll(derates.step(facts, composer.codes(facts)));
    if (facts.isEngineOff()) {
      advisories.forEach(
          each -> events.addAll(events(each, each.suppress(facts.timeMicros()), facts)));
    } else {
      events.addAll(judge(facts));
      advisories.stream()
          .filter(each -> isJudged(each.members().getFirst().rule(), facts))
          .forEach(each -> events.addAll(events(each, each.step(facts), facts)));
    }
    history.warned(warned());
    line = composer.line(top(), facts);
    return List.copyOf(events);
  }

  /** Once, at the start. */
  private List<AdviceEvent> tellOutOfService(long timeMicros) {
    List<AdviceEvent> events =
        outOfService.stream()
            .map(
                each ->
                    EventFigures.ofRule(
                        timeMicros, AdviceEvent.Kind.OUT_OF_SERVICE, each.rule(), each.reason()))
            .toList();
    outOfService = List.of();
    return events;
  }

  /** While the link is lost only the rule about the link is judged: everything else is old. */
  private static boolean isJudged(Rule rule, SituationFacts facts) {
    return !facts.isLinkLost() || rule.advise() == Answer.CHECK_LINK;
  }

  private List<AdviceEvent> judge(SituationFacts facts) {
    Map<Rule, RuleFailure> failures = new LinkedHashMap<>();
    for (RuleWatch watch : watches) {
      if (!isJudged(watch.rule(), facts)) {
        watch.pause();
        continue;
      }
      try {
        watch.step(facts);
      } catch (RuleFailure failure) {
        failures.put(watch.rule(), failure);
      }
    }
    return failures.entrySet().stream()
        .map(each -> shelve(each.getKey(), each.getValue(), facts))
        .toList();
  }

  /** A rule that breaks is put aside for the rest of the trip; the others go on. */
  private AdviceEvent shelve(Rule rule, RuleFailure failure, SituationFacts facts) {
    watches.stream().filter(each -> each.rule().equals(rule)).forEach(RuleWatch::suppress);
    watches.removeIf(each -> each.rule().equals(rule));
    return EventFigures.ofRule(
        facts.timeMicros(), AdviceEvent.Kind.SHELVED, rule.id(), words.ruleFailed(rule, failure));
  }

  private List<AdviceEvent> events(
      Advisory advisory, List<Advisory.Transition> transitions, SituationFacts facts) {
    return transitions.stream().map(each -> event(advisory, each, facts)).toList();
  }

  private AdviceEvent event(
      Advisory advisory, Advisory.Transition transition, SituationFacts facts) {
    return EventFigures.of(
        facts,
        transition.kind(),
        transition.rule(),
        composer.text(transition.kind(), advisory, facts));
  }

  /** The advisory that the line speaks of: a lost link first, else the most urgent. */
  private Optional<Advisory> top() {
    return advisories.stream()
        .filter(Advisory::isSaid)
        .min(
            Comparator.comparing((Advisory each) -> !isAboutLink(each))
                .thenComparing(each -> !each.isActive())
                .thenComparing(Advisory::isHeld)
                .thenComparing(each -> level(each), Comparator.reverseOrder())
                .thenComparing(each -> each.state() instanceof AdvisoryState.Shelved)
                .thenComparing(each -> each.lead().orElseThrow().urgency()));
  }

  private static boolean isAboutLink(Advisory advisory) {
    return advisory.isActive()
        && !advisory.isHeld()
        && advisory.lead().orElseThrow().rule().advise() == Answer.CHECK_LINK;
  }

  private static Level level(Advisory advisory) {
    return advisory.lead().orElseThrow().rule().level();
  }

  /** What to show now. */
  public AdviceLine line() {
    return line;
  }

  private Set<Channel> warned() {
    return watches.stream()
        .filter(watch -> watch.isRaised() && watch.rule().level() != Level.NOTICE)
        .flatMap(watch -> watch.channel().stream())
        .collect(Collectors.toSet());
  }

  /** The level of each channel that a rule speaks of now; the others hold or cannot be told. */
  public Map<Channel, Level> levels() {
    Map<Channel, Level> levels = new TreeMap<>();
    watches.stream()
        .filter(RuleWatch::isRaised)
        .forEach(
            watch ->
                watch
                    .channel()
                    .ifPresent(
                        channel ->
                            levels.merge(
                                channel,
                                watch.rule().level(),
                                (left, right) -> left.compareTo(right) >= 0 ? left : right)));
    return Map.copyOf(levels);
  }

  /**
   * The driver pressed "Got it".
   *
   * @param timeMicros microseconds since trip start, not before the last step
   * @return what that did; empty if there was nothing to answer
   */
  public List<AdviceEvent> acknowledge(long timeMicros) {
    return answer(timeMicros, advisory -> advisory.acknowledge(timeMicros));
  }

  /**
   * The driver put the advisory aside: 3 min at most, never more than half the time left, never a
   * warning.
   *
   * @param timeMicros microseconds since trip start, not before the last step
   * @return what that did; empty if it is not allowed
   */
  public List<AdviceEvent> snooze(long timeMicros) {
    return latest
        .map(facts -> answer(timeMicros, advisory -> advisory.snooze(timeMicros, facts)))
        .orElse(List.of());
  }

  /** How long the advisory could be put aside now; empty if there is none or it cannot. */
  public OptionalDouble snoozeSeconds() {
    return latest.isEmpty()
        ? OptionalDouble.empty()
        : top().map(each -> each.snoozeSeconds(latest.get())).orElseGet(OptionalDouble::empty);
  }

  /**
   * The driver wants the advisory back.
   *
   * @param timeMicros microseconds since trip start, not before the last step
   * @return what that did; empty if nothing was put aside
   */
  public List<AdviceEvent> show(long timeMicros) {
    return answer(timeMicros, Advisory::show);
  }

  private List<AdviceEvent> answer(
      long timeMicros, Function<Advisory, Optional<Advisory.Transition>> answer) {
    Optional<Advisory> advisory = top();
    if (latest.isEmpty() || advisory.isEmpty()) {
      return List.of();
    }
    SituationFacts facts = latest.get();
    List<AdviceEvent> events =
        answer.apply(advisory.get()).stream()
            .map(each -> event(advisory.get(), each, facts))
            .map(each -> EventFigures.at(timeMicros, each))
            .toList();
    line = composer.line(top(), facts);
    return events;
  }
}
