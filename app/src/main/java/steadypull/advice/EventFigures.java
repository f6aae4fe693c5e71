package steadypull.advice;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import steadypull.channel.Channel;
import steadypull.thermal.LimitForecast;

/** Builds events with the figures of the moment. */
final class EventFigures {
  private EventFigures() {}

  static AdviceEvent of(SituationFacts facts, AdviceEvent.Kind kind, RuleWatch watch, String text) {
    return figures(
        facts,
        kind,
        Optional.of(watch.ruleId()),
        Optional.of(watch.rule().level()),
        watch.channel(),
        text);
  }

  static AdviceEvent ofChannel(SituationFacts facts, AdviceEvent.Kind kind, Channel channel) {
    return figures(facts, kind, Optional.empty(), Optional.empty(), Optional.of(channel), "");
  }

  static AdviceEvent ofVehicle(long timeMicros, AdviceEvent.Kind kind, String text) {
    return bare(timeMicros, kind, Optional.empty(), Optional.empty(), text);
  }

  static AdviceEvent ofRule(long timeMicros, AdviceEvent.Kind kind, String rule, String text) {
    return bare(timeMicros, kind, Optional.of(rule), Optional.of(Level.NOTICE), text);
  }

  /** The same event at another time. */
  static AdviceEvent at(long timeMicros, AdviceEvent event) {
    return new AdviceEvent(
        timeMicros,
        event.kind(),
        event.rule(),
        event.level(),
        event.channel(),
        event.value(),
        event.limit(),
        event.probability180(),
        event.secondsToLimit(),
        event.secondsToLimitP10(),
        event.secondsToLimitP90(),
        event.settlesAt(),
        event.text());
  }

  private static AdviceEvent bare(
      long timeMicros,
      AdviceEvent.Kind kind,
      Optional<String> rule,
      Optional<Level> level,
      String text) {
    OptionalDouble none = OptionalDouble.empty();
    return new AdviceEvent(
        timeMicros,
        kind,
        rule,
        level,
        Optional.empty(),
        none,
        none,
        none,
        none,
        none,
        none,
        none,
        text);
  }

  private static AdviceEvent figures(
      SituationFacts facts,
      AdviceEvent.Kind kind,
      Optional<String> rule,
      Optional<Level> level,
      Optional<Channel> channel,
      String text) {
    Optional<ChannelFacts> of = channel.flatMap(facts::of);
    Optional<LimitForecast> toLimit = of.flatMap(ChannelFacts::toLimit);
    return new AdviceEvent(
        facts.timeMicros(),
        kind,
        rule,
        level,
        channel,
        number(of, ChannelFacts::value),
        number(of, ChannelFacts::limit),
        of.map(EventFigures::probability).orElse(OptionalDouble.empty()),
        number(of, ChannelFacts::secondsToLimit),
        number(toLimit, LimitForecast::secondsP10),
        number(toLimit, LimitForecast::secondsP90),
        number(
            of.flatMap(ChannelFacts::forecast), each -> OptionalDouble.of(each.settlesAtCelsius())),
        text);
  }

  /** A limit that is exceeded already is certain, with a forecast or without. */
  private static OptionalDouble probability(ChannelFacts facts) {
    return facts.isOverLimit()
        ? OptionalDouble.of(1)
        : number(facts.toLimit(), each -> OptionalDouble.of(each.probability180()));
  }

  private static <T> OptionalDouble number(Optional<T> of, Function<T, OptionalDouble> figure) {
    return of.map(figure).orElse(OptionalDouble.empty());
  }
}
