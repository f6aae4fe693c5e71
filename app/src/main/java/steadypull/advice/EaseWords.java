package steadypull.advice;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Fan;
import steadypull.thermal.Forecast;
import steadypull.thermal.LimitForecast;

/** Says what to do about load: the result first, then what happens otherwise. Immutable. */
final class EaseWords {
  /** Below this one drives as good as not at all. */
  private static final double CRAWLING_KM_H = 2;

  /** How long a rig idles after a hard pull at most (common practice, no source). */
  private static final double IDLING_SECONDS = 180;

  /** No more than this is not worth a word. */
  private static final double UNLIKELY = 0.05;

  private final AdviceWords words;

  EaseWords(AdviceWords words) {
    this.words = words;
  }

  /** What to do about load, and why. */
  AdviceWords.Saying saying(
      ChannelFacts facts, Remedy remedy, Level level, SituationFacts situation) {
    String urgency = level == Level.WARNING ? ".now" : "";
    return switch (remedy) {
      case Remedy.EaseTo ease ->
          new AdviceWords.Saying(
              words.text(
                  "action.ease" + urgency,
                  words.quantities().speedDigits(ease.kilometresPerHour())),
              easeReason(facts, ease, situation));
      case Remedy.NextParkingArea parking ->
          new AdviceWords.Saying(
              words.text("action.parking" + urgency), parkingReason(facts, parking));
      case Remedy.AirConditioningOff off ->
          new AdviceWords.Saying(
              words.text("action.cool-off" + urgency),
              sameSpeedReason(facts, off.changed(), situation));
      case Remedy.GearLower lower ->
          new AdviceWords.Saying(
              words.text("action.gear" + urgency),
              sameSpeedReason(facts, lower.changed(), situation));
      case Remedy.EaseOff _ ->
          new AdviceWords.Saying(words.text("action.ease-off" + urgency), held(facts, situation));
      case Remedy.OnDescent _ ->
          new AdviceWords.Saying(
              nearOrOver(facts),
              words.text("reason.descent", words.channel(facts.channel()), words.now(facts)));
      case Remedy.Standing _ ->
          new AdviceWords.Saying(nearOrOver(facts), standing(facts, situation));
    };
  }

  private String sameSpeedReason(ChannelFacts facts, Forecast changed, SituationFacts situation) {
    String then =
        ready(changed, facts.channel())
            .map(each -> then(words.channel(facts.channel()), each, facts, /* isSure= */ true))
            .orElse("");
    return (then + " " + held(facts, situation)).strip();
  }

  private String nearOrOver(ChannelFacts facts) {
    return words.text(
        facts.isOverLimit() ? "action.over" : "action.near", words.channel(facts.channel()));
  }

  private String standing(ChannelFacts facts, SituationFacts situation) {
    return situation.speed().orElse(0) < CRAWLING_KM_H
        ? words.text("reason.idle") + capWarning(facts)
        : held(facts, situation);
  }

  private String capWarning(ChannelFacts facts) {
    return ThermalNature.word(facts.channel()).equals("coolant")
        ? " " + words.text("reason.cap")
        : "";
  }

  private String parkingReason(ChannelFacts facts, Remedy.NextParkingArea parking) {
    if (facts.isOverLimit()) {
      return words.text("reason.over", words.channel(facts.channel()), words.now(facts))
          + " "
          + idleThere(facts, parking)
          + capWarning(facts);
    }
    OptionalDouble reaches = reaches(parking.forecast(), facts.channel());
    String key = reaches.isPresent() ? "reason.even" : "reason.even-may";
    return words.text(
            key,
            words.quantities().speed(parking.kilometresPerHour()),
            words.channelInside(facts.channel()),
            words.limit(facts),
            words.when(reaches))
        + " "
        + idleThere(facts, parking);
  }

  /** What idling there does, as far as the model can tell. */
  private String idleThere(ChannelFacts facts, Remedy.NextParkingArea parking) {
    return ready(parking.stopped(), facts.channel())
        .map(each -> LeastHeadroom.after(each.fan(), IDLING_SECONDS))
        .filter(celsius -> celsius < facts.limit().orElse(Double.NEGATIVE_INFINITY))
        .map(celsius -> words.text("reason.idle-cools", words.quantities().temperature(celsius)))
        .orElseGet(() -> words.text("reason.idle-there"));
  }

  private String easeReason(ChannelFacts facts, Remedy.EaseTo ease, SituationFacts situation) {
    if (facts.isDerating()) {
      return words.text("reason.derating", words.quantities().whole(situation.powerCutPercent()))
          + " "
          + (facts.isOverLimit() ? backUnder(facts, ease) : then(facts, ease));
    }
    if (facts.isOverLimit()) {
      return words.text("reason.over", words.channel(facts.channel()), words.now(facts))
          + " "
          + backUnder(facts, ease);
    }
    String otherwise = ease.holdsAt().isPresent() ? wouldHold(ease) : held(facts, situation);
    return (then(facts, ease) + " " + otherwise).strip();
  }

  private String wouldHold(Remedy.EaseTo ease) {
    return words.text("reason.would-hold", words.quantities().speed(ease.holdsAt().orElseThrow()));
  }

  /** When the eased median is back under the limit. */
  private String backUnder(ChannelFacts facts, Remedy.EaseTo ease) {
    Optional<ChannelForecast.Ready> eased = ready(ease.eased(), facts.channel());
    double limit = facts.limit().orElseThrow();
    return eased.stream()
        .flatMap(each -> firstUnder(each.fan(), limit).stream().boxed())
        .findFirst()
        .map(
            seconds ->
                words.text(
                    "reason.back-under", words.limit(facts), words.quantities().countdown(seconds)))
        .orElseGet(() -> then(facts, ease));
  }

  /** Seconds until the median first falls under a limit, between two points by a straight line. */
  private static OptionalDouble firstUnder(Fan fan, double limit) {
    for (int point = 1; point < fan.size(); point++) {
      double before = fan.celsius(Fan.MEDIAN, point - 1);
      double after = fan.celsius(Fan.MEDIAN, point);
      if (after < limit) {
        double share = before > limit ? (before - limit) / (before - after) : 0;
        double from = fan.secondsAhead(point - 1);
        return OptionalDouble.of(from + share * (fan.secondsAhead(point) - from));
      }
    }
    return OptionalDouble.empty();
  }

  /** The result of easing. */
  private String then(ChannelFacts facts, Remedy.EaseTo ease) {
    String name = words.channel(facts.channel());
    OptionalDouble reaches = reaches(ease.eased(), facts.channel());
    if (ease.holdsAt().isPresent() && reaches.isPresent()) {
      return words.text("then.reaches", name, words.limit(facts), words.when(reaches));
    }
    boolean isSure = ease.holdsAt().isEmpty();
    return ready(ease.eased(), facts.channel())
        .map(each -> then(name, each, facts, isSure))
        .orElse("");
  }

  private String then(
      String name, ChannelForecast.Ready eased, ChannelFacts facts, boolean isSure) {
    double hottest = LeastHeadroom.hottest(eased.fan(), AdviceWords.FAR_SECONDS);
    double settles = eased.settlesAtCelsius();
    if (settles >= facts.limit().orElse(Double.POSITIVE_INFINITY)) {
      return words.text("then.rises", name, words.quantities().temperature(hottest));
    }
    if (!isSure) {
      return words.text("then.likely", name, words.quantities().temperature(settles));
    }
    boolean peaks = hottest >= settles + 1 && hottest >= eased.nowCelsius() + 1;
    return words.text(
        peaks ? "then.peaks" : "then.settles",
        name,
        words.quantities().temperature(peaks ? hottest : settles));
  }

  /** What happens otherwise. */
  private String held(ChannelFacts facts, SituationFacts situation) {
    if (facts.isOverLimit()) {
      return words.text("reason.over", words.channel(facts.channel()), words.now(facts));
    }
    OptionalDouble seconds = facts.secondsToLimit();
    if (seconds.isEmpty() && facts.probabilityInTime().orElse(1) <= UNLIKELY) {
      return "";
    }
    String key = seconds.isPresent() ? "held.reaches" : "held.may";
    return words.text(key, atSpeed(situation), words.limit(facts), words.when(seconds));
  }

  private String atSpeed(SituationFacts situation) {
    if (situation.isFlatOut()) {
      return words.text("held.flat-out");
    }
    return situation.speed().isPresent()
        ? words.text("held.at", words.quantities().speed(situation.speed().getAsDouble()))
        : words.text("held.load");
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
