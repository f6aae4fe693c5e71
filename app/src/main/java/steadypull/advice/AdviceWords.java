package steadypull.advice;

import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import steadypull.channel.Channel;
import steadypull.channel.QuantityFormat;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;
import steadypull.thermal.Forecast;
import steadypull.thermal.LimitForecast;

/** Says it in the driver's language and units. Immutable. */
final class AdviceWords {
  private static final double IMMINENT_SECONDS = 5;
  private static final double FAR_SECONDS = 600;

  /** Below this one drives as good as not at all. */
  private static final double CRAWLING_KM_H = 2;

  /** No more than this is not worth a word. */
  private static final double UNLIKELY = 0.05;

  private final ResourceBundle bundle;
  private final Locale locale;
  private final QuantityFormat quantities;

  AdviceWords(Locale locale, QuantityFormat quantities) {
    bundle =
        ResourceBundle.getBundle(
            "steadypull.advice.AdviceWords",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    this.locale = locale;
    this.quantities = quantities;
  }

  /**
   * The two parts of what is said.
   *
   * @param action at most 850 px wide at 64 px
   * @param reason result first, then the alternative
   */
  record Saying(String action, String reason) {}

  String text(String key, Object... arguments) {
    return new MessageFormat(bundle.getString(key), locale).format(arguments);
  }

  /** The channel at the start of a sentence: {@code Charge air}. */
  String channel(Channel channel) {
    return named("channel.", channel);
  }

  /** The channel inside a sentence: {@code charge air}. */
  private String channelInside(Channel channel) {
    return named("inside.", channel);
  }

  private String named(String prefix, Channel channel) {
    String key = prefix + ThermalNature.word(channel);
    return bundle.containsKey(key) ? bundle.getString(key) : channel.id().replace('_', ' ');
  }

  Saying linkLost(double secondsSilent) {
    return new Saying(
        text("action.link-lost"), text("reason.link-lost", quantities.whole(secondsSilent)));
  }

  Saying powerLimited(double cutPercent) {
    return new Saying(
        text("action.power-limited"), text("reason.power-limited", quantities.whole(cutPercent)));
  }

  /** For rules that the program has no words for: the rule's own. */
  Saying ownWords(Rule rule) {
    String spaced = rule.id().replace(Rule.CHANNEL_PLACE, "").replace('-', ' ').strip();
    return new Saying(
        spaced.isEmpty()
            ? rule.id()
            : spaced.substring(0, 1).toUpperCase(locale) + spaced.substring(1),
        rule.why());
  }

  String ruleFailed(Rule rule, RuleFailure failure) {
    return text("rule.failed", rule.id(), String.valueOf(failure.getMessage()));
  }

  Saying holds(ChannelFacts least, List<ChannelFacts> blind) {
    String reason =
        text(
            "reason.holds",
            channelInside(least.channel()),
            quantities.temperatureDifference(LeastHeadroom.of(least)));
    if (blind.isEmpty()) {
      return new Saying(text("action.holds"), reason);
    }
    String names =
        blind.stream().map(each -> channelInside(each.channel())).collect(Collectors.joining(", "));
    return new Saying(text("action.holds"), reason + " " + text("reason.blind", names));
  }

  String back(ChannelFacts facts, boolean hasBeenOver, double secondsDerated) {
    String settles =
        facts
            .forecast()
            .map(each -> quantities.temperature(each.settlesAtCelsius()))
            .orElseGet(() -> quantities.temperature(facts.value().orElse(0)));
    String reason =
        text(hasBeenOver ? "back.under" : "back.settles", channel(facts.channel()), settles);
    return secondsDerated < 1
        ? reason
        : reason + " " + text("back.derated", quantities.whole(secondsDerated));
  }

  Saying mayReach(ChannelFacts facts) {
    if (facts.isOverLimit()) {
      return new Saying(
          text("action.over", channel(facts.channel())),
          text("reason.over", channel(facts.channel()), now(facts)));
    }
    return new Saying(text("action.may-reach", limit(facts)), mayReachReason(facts));
  }

  private String mayReachReason(ChannelFacts facts) {
    Optional<LimitForecast> toLimit = facts.toLimit();
    String inside = channelInside(facts.channel());
    String name = channel(facts.channel());
    if (toLimit.isPresent() && toLimit.get().seconds().isPresent()) {
      return text("may.reaches", name, limit(facts), when(toLimit.get().seconds()))
          + likely(toLimit.get());
    }
    if (toLimit.isPresent() && toLimit.get().secondsP10().isPresent()) {
      return text("may.earliest", name, limit(facts), when(toLimit.get().secondsP10()));
    }
    return text("may.settles", inside, rises(facts));
  }

  private String likely(LimitForecast toLimit) {
    return toLimit.secondsP25().isPresent() && toLimit.secondsP75().isPresent()
        ? " "
            + text(
                "may.likely",
                quantities.countdown(toLimit.secondsP25().getAsDouble()),
                quantities.countdown(toLimit.secondsP75().getAsDouble()))
        : "";
  }

  private String rises(ChannelFacts facts) {
    return facts
        .forecast()
        .map(each -> quantities.temperature(LeastHeadroom.hottest(each.fan(), FAR_SECONDS)))
        .orElseGet(() -> now(facts));
  }

  /** What to do about load, and why. */
  Saying ease(ChannelFacts facts, Remedy remedy, Level level, SituationFacts situation) {
    String urgency = level == Level.WARNING ? ".now" : "";
    return switch (remedy) {
      case Remedy.EaseTo ease ->
          new Saying(
              text("action.ease" + urgency, quantities.speedDigits(ease.kilometresPerHour())),
              easeReason(facts, ease, situation));
      case Remedy.NextParkingArea parking ->
          new Saying(text("action.parking" + urgency), parkingReason(facts, parking));
      case Remedy.EaseOff off ->
          new Saying(text("action.ease-off" + urgency), held(facts, situation));
      case Remedy.OnDescent descent ->
          new Saying(
              nearOrOver(facts), text("reason.descent", channel(facts.channel()), now(facts)));
      case Remedy.Standing standing -> new Saying(nearOrOver(facts), standing(facts, situation));
    };
  }

  private String nearOrOver(ChannelFacts facts) {
    return text(facts.isOverLimit() ? "action.over" : "action.near", channel(facts.channel()));
  }

  private String standing(ChannelFacts facts, SituationFacts situation) {
    return situation.speed().orElse(0) < CRAWLING_KM_H
        ? text("reason.idle") + capWarning(facts)
        : held(facts, situation);
  }

  private String capWarning(ChannelFacts facts) {
    return ThermalNature.word(facts.channel()).equals("coolant") ? " " + text("reason.cap") : "";
  }

  private String parkingReason(ChannelFacts facts, Remedy.NextParkingArea parking) {
    if (facts.isOverLimit()) {
      return text("reason.over", channel(facts.channel()), now(facts))
          + " "
          + text("reason.idle-there")
          + capWarning(facts);
    }
    OptionalDouble reaches = reaches(parking.forecast(), facts.channel());
    String key = reaches.isPresent() ? "reason.even" : "reason.even-may";
    return text(
            key,
            quantities.speed(parking.kilometresPerHour()),
            channelInside(facts.channel()),
            limit(facts),
            when(reaches))
        + " "
        + text("reason.idle-there");
  }

  private String easeReason(ChannelFacts facts, Remedy.EaseTo ease, SituationFacts situation) {
    if (facts.isDerating()) {
      return text("reason.derating", quantities.whole(situation.powerCutPercent()))
          + " "
          + (facts.isOverLimit() ? backUnder(facts, ease) : then(facts, ease));
    }
    if (facts.isOverLimit()) {
      return text("reason.over", channel(facts.channel()), now(facts))
          + " "
          + backUnder(facts, ease);
    }
    String otherwise = ease.holdsAt().isPresent() ? wouldHold(ease) : held(facts, situation);
    return (then(facts, ease) + " " + otherwise).strip();
  }

  private String wouldHold(Remedy.EaseTo ease) {
    return text("reason.would-hold", quantities.speed(ease.holdsAt().orElseThrow()));
  }

  /** When the eased median is back under the limit. */
  private String backUnder(ChannelFacts facts, Remedy.EaseTo ease) {
    Optional<ChannelForecast.Ready> eased = ready(ease.eased(), facts.channel());
    double limit = facts.limit().orElseThrow();
    return eased.stream()
        .flatMap(each -> firstUnder(each.fan(), limit).stream().boxed())
        .findFirst()
        .map(seconds -> text("reason.back-under", limit(facts), quantities.countdown(seconds)))
        .orElseGet(() -> then(facts, ease));
  }

  private static OptionalDouble firstUnder(Fan fan, double limit) {
    for (int point = 1; point < fan.size(); point++) {
      if (fan.celsius(Fan.MEDIAN, point) < limit) {
        return OptionalDouble.of(fan.secondsAhead(point));
      }
    }
    return OptionalDouble.empty();
  }

  /** The result of easing. */
  private String then(ChannelFacts facts, Remedy.EaseTo ease) {
    String name = channel(facts.channel());
    OptionalDouble reaches = reaches(ease.eased(), facts.channel());
    if (ease.holdsAt().isPresent() && reaches.isPresent()) {
      return text("then.reaches", name, limit(facts), when(reaches));
    }
    return ready(ease.eased(), facts.channel()).map(each -> then(name, each, facts)).orElse("");
  }

  private String then(String name, ChannelForecast.Ready eased, ChannelFacts facts) {
    double hottest = LeastHeadroom.hottest(eased.fan(), FAR_SECONDS);
    double settles = eased.settlesAtCelsius();
    if (settles >= facts.limit().orElse(Double.POSITIVE_INFINITY)) {
      return text("then.rises", name, quantities.temperature(hottest));
    }
    boolean peaks = hottest >= settles + 1 && hottest >= eased.nowCelsius() + 1;
    return text(
        peaks ? "then.peaks" : "then.settles",
        name,
        quantities.temperature(peaks ? hottest : settles));
  }

  /** What happens otherwise. */
  private String held(ChannelFacts facts, SituationFacts situation) {
    if (facts.isOverLimit()) {
      return text("reason.over", channel(facts.channel()), now(facts));
    }
    OptionalDouble seconds = facts.secondsToLimit();
    if (seconds.isEmpty() && facts.probabilityInTime().orElse(1) <= UNLIKELY) {
      return "";
    }
    String key = seconds.isPresent() ? "held.reaches" : "held.may";
    return text(key, atSpeed(situation), limit(facts), when(seconds));
  }

  private String atSpeed(SituationFacts situation) {
    if (situation.isFlatOut()) {
      return text("held.flat-out");
    }
    return situation.speed().isPresent()
        ? text("held.at", quantities.speed(situation.speed().getAsDouble()))
        : text("held.load");
  }

  private String when(OptionalDouble seconds) {
    return seconds.isEmpty()
        ? ""
        : seconds.getAsDouble() < IMMINENT_SECONDS
            ? text("when.now")
            : text("when.in", quantities.countdown(seconds.getAsDouble()));
  }

  private String limit(ChannelFacts facts) {
    return quantities.temperature(facts.limit().orElse(0));
  }

  private String now(ChannelFacts facts) {
    return quantities.temperature(facts.value().orElse(0));
  }

  private static OptionalDouble reaches(Forecast forecast, Channel channel) {
    return ready(forecast, channel)
        .flatMap(ChannelForecast.Ready::toLimit)
        .map(LimitForecast::seconds)
        .orElse(OptionalDouble.empty());
  }

  private static Optional<ChannelForecast.Ready> ready(Forecast forecast, Channel channel) {
    return forecast
        .of(channel)
        .flatMap(
            each ->
                each instanceof ChannelForecast.Ready ready
                    ? Optional.of(ready)
                    : Optional.empty());
  }
}
