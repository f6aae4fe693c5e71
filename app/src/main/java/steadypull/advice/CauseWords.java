package steadypull.advice;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Says what stands behind a temperature: a climb, a fan, a pump, a sensor, a limit that nobody has
 * confirmed. Immutable.
 */
final class CauseWords {
  private final AdviceWords words;

  CauseWords(AdviceWords words) {
    this.words = words;
  }

  /** What to do and why; the rule's own words where the program lacks a figure to say it with. */
  AdviceWords.Saying saying(Rule rule, Optional<ChannelFacts> channel, SituationFacts facts) {
    return said(rule.advise(), channel, facts).orElseGet(() -> words.ownWords(rule));
  }

  private Optional<AdviceWords.Saying> said(
      Answer answer, Optional<ChannelFacts> channel, SituationFacts facts) {
    return switch (answer) {
      case CLIMB_AHEAD -> channel.flatMap(each -> climb(each, facts));
      case RECOVER -> channel.flatMap(this::recovering);
      case IDLE ->
          Optional.of(
              new AdviceWords.Saying(words.text("action.idle"), words.text("reason.idle.off")));
      case STOP_AND_LOOK -> channel.map(each -> stop(each, facts));
      case CHECK_FAN -> channel.map(this::fan);
      case CHECK_PUMP -> pump(facts);
      case CHECK_COOLER -> Optional.of(cooler(facts));
      case CHECK_SENSOR -> channel.map(each -> sensor(each, facts));
      case CHECK_CHARGING -> Optional.of(plain("charging"));
      case CONFIRM_LIMIT -> channel.map(this::unconfirmed);
      case EASE, WATCH, READ_CODES, CHECK_LINK -> Optional.empty();
    };
  }

  private AdviceWords.Saying plain(String key) {
    return new AdviceWords.Saying(words.text("action." + key), words.text("reason." + key));
  }

  private Optional<AdviceWords.Saying> climb(ChannelFacts channel, SituationFacts facts) {
    OptionalDouble grade = facts.situation().surroundings().climbGradePercent();
    OptionalDouble seconds = channel.secondsToLimit();
    if (grade.isEmpty() || seconds.isEmpty() || facts.speed().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new AdviceWords.Saying(
            words.text("action.climb", words.quantities().whole(grade.getAsDouble())),
            words.text(
                "reason.climb",
                words.quantities().speed(facts.speed().getAsDouble()),
                words.channelInside(channel.channel()),
                words.limit(channel),
                words.when(seconds))));
  }

  private Optional<AdviceWords.Saying> recovering(ChannelFacts channel) {
    if (channel.value().isEmpty() || channel.limit().isEmpty()) {
      return Optional.empty();
    }
    double headroom = channel.limit().getAsDouble() - channel.value().getAsDouble();
    return Optional.of(
        new AdviceWords.Saying(
            words.text("action.recover"),
            words.text(
                "reason.recover",
                words.channel(channel.channel()),
                words.now(channel),
                words.quantities().temperatureDifference(Math.max(0, headroom)))));
  }

  private AdviceWords.Saying stop(ChannelFacts channel, SituationFacts facts) {
    return new AdviceWords.Saying(
        words.text("action.parking.now"),
        words.text(
            "reason.lost",
            words.channel(channel.channel()),
            words
                .quantities()
                .temperatureDifference(
                    facts.history().fallsIn30Seconds(channel.channel()).orElse(0))));
  }

  private AdviceWords.Saying fan(ChannelFacts channel) {
    return new AdviceWords.Saying(
        words.text("action.fan"),
        words.text("reason.fan", words.channel(channel.channel()), words.now(channel)));
  }

  private Optional<AdviceWords.Saying> pump(SituationFacts facts) {
    return facts.chargeAirAboveCoolant().stream()
        .mapToObj(above -> words.quantities().temperatureDifference(above))
        .map(
            above ->
                new AdviceWords.Saying(words.text("action.pump"), words.text("reason.pump", above)))
        .findFirst();
  }

  private AdviceWords.Saying cooler(SituationFacts facts) {
    double percent = facts.situation().surroundings().coolerFallPercent();
    return new AdviceWords.Saying(
        words.text("action.cooler"),
        words.text("reason.cooler", words.quantities().whole(percent)));
  }

  private AdviceWords.Saying sensor(ChannelFacts channel, SituationFacts facts) {
    return new AdviceWords.Saying(
        words.text("action.sensor", words.channelInside(channel.channel())),
        words.text(
            "reason.sensor",
            words.quantities().whole(facts.secondsUnheard(channel.channel()).orElse(0))));
  }

  private AdviceWords.Saying unconfirmed(ChannelFacts channel) {
    return new AdviceWords.Saying(
        words.text("action.unconfirmed"),
        words.text("reason.unconfirmed", words.channel(channel.channel()), words.limit(channel)));
  }
}
