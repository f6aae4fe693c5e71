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
import steadypull.thermal.LimitForecast;

/** Says it in the driver's language and units. Immutable. */
final class AdviceWords {
  private static final double IMMINENT_SECONDS = 5;

  /** As far as a fan reaches. */
  static final double FAR_SECONDS = 600;

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

  QuantityFormat quantities() {
    return quantities;
  }

  String text(String key, Object... arguments) {
    return new MessageFormat(bundle.getString(key), locale).format(arguments);
  }

  /** The channel at the start of a sentence: {@code Charge air}. */
  String channel(Channel channel) {
    return named("channel.", channel);
  }

  /** The channel inside a sentence: {@code charge air}. */
  String channelInside(Channel channel) {
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

  /** The link is there, but it was lost more than once in the last minute. */
  Saying linkUnsteady() {
    return new Saying(text("action.link-unsteady"), text("reason.link-unsteady"));
  }

  /** Which channel was first of several. */
  String first(Channel channel) {
    return text("back.first", channel(channel));
  }

  /** The same words as a sentence. */
  String sentence(String words) {
    return words.substring(0, 1).toUpperCase(locale) + words.substring(1) + ".";
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
    String name = channel(facts.channel());
    String reason =
        facts
            .forecast()
            .map(each -> quantities.temperature(each.settlesAtCelsius()))
            .map(settles -> text(hasBeenOver ? "back.under" : "back.settles", name, settles))
            .orElseGet(() -> text("back.now", name, now(facts)));
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

  String when(OptionalDouble seconds) {
    return seconds.isEmpty()
        ? ""
        : seconds.getAsDouble() < IMMINENT_SECONDS
            ? text("when.now")
            : text("when.in", quantities.countdown(seconds.getAsDouble()));
  }

  String limit(ChannelFacts facts) {
    return quantities.temperature(facts.limit().orElse(0));
  }

  String now(ChannelFacts facts) {
    return quantities.temperature(facts.value().orElse(0));
  }
}
