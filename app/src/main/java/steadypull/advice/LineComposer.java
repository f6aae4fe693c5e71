package steadypull.advice;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;

/** Makes the advice line out of the advisory that matters most, or of the calm. */
final class LineComposer {
  private final AdviceWords words;
  private final EaseWords easeWords;
  private final CodeWords codeWords;
  private final CauseWords causeWords;
  private final EndWords endWords;
  private final CalmLines calm;

  LineComposer(AdviceWords words) {
    this.words = words;
    easeWords = new EaseWords(words);
    codeWords = new CodeWords(words);
    causeWords = new CauseWords(words);
    endWords = new EndWords(words);
    calm = new CalmLines(words);
  }

  /** The line before the first situation. */
  AdviceLine waiting() {
    return calm.learning(words.text("reason.waiting"));
  }

  AdviceLine line(Optional<Advisory> top, SituationFacts facts) {
    return top.map(each -> line(each, facts)).orElseGet(() -> calm.line(facts));
  }

  /** What is said about an advisory in one text, for an event of it. */
  String text(AdviceEvent.Kind kind, Advisory advisory, SituationFacts facts) {
    return switch (kind) {
      case CLEARED -> endWords.cleared(advisory, facts);
      case SUPPRESSED -> words.text("end.suppressed");
      case ADVICE_HELD -> words.text("end.held");
      case ADVICE_FAILED -> words.text("end.failed");
      case ADVICE_NOT_FOLLOWED -> words.text("end.not-followed");
      case RAISED,
          ESCALATED,
          EASED,
          ACKNOWLEDGED,
          SHELVED,
          UNSHELVED,
          JOINED,
          OUT_OF_SERVICE,
          DERATE_BEGAN,
          DERATE_ENDED,
          POWER_LIMITED ->
          text(advisory, facts);
    };
  }

  private String text(Advisory advisory, SituationFacts facts) {
    AdviceLine line = line(advisory, facts);
    return line.reason().isEmpty() ? line.action() : line.action() + ". " + line.reason();
  }

  /** What is said of the codes behind limited power; empty if none are known. */
  String codes(SituationFacts facts) {
    return codeWords.stored(facts.codes());
  }

  private AdviceLine line(Advisory advisory, SituationFacts facts) {
    return switch (advisory.state()) {
      case AdvisoryState.Normal _, AdvisoryState.Suppressed _ -> calm.line(facts);
      case AdvisoryState.Returned _ -> returned(advisory, facts);
      case AdvisoryState.Unacknowledged _ -> active(advisory, facts);
      case AdvisoryState.Acknowledged _ -> active(advisory, facts);
      case AdvisoryState.Shelved _ -> active(advisory, facts);
    };
  }

  private AdviceLine returned(Advisory advisory, SituationFacts facts) {
    Optional<ChannelFacts> channel = advisory.leadFacts(facts);
    if (channel.isEmpty() || !calm.holds(facts)) {
      return calm.line(facts);
    }
    return new AdviceLine(
        AdviceLine.State.HOLDS_AGAIN,
        new AdviceLine.Response.None(),
        words.text("action.holds-again"),
        words.back(channel.get(), advisory.hasBeenOver(), advisory.secondsDerated())
            + advisory.firstOut().map(each -> " " + words.first(each)).orElse(""),
        Optional.of(channel.get().channel()),
        OptionalDouble.empty());
  }

  private AdviceLine active(Advisory advisory, SituationFacts facts) {
    RuleWatch lead = advisory.lead().orElseThrow();
    Optional<Channel> channel = lead.channel();
    AdviceWords.Saying saying = saying(advisory, lead, facts);
    return new AdviceLine(
        state(advisory, lead.rule()),
        response(advisory.state()),
        saying.action(),
        saying.reason(),
        channel,
        advisory.remedy().orElse(null) instanceof Remedy.EaseTo ease
            ? OptionalDouble.of(ease.kilometresPerHour())
            : OptionalDouble.empty());
  }

  private AdviceWords.Saying saying(Advisory advisory, RuleWatch lead, SituationFacts facts) {
    Optional<ChannelFacts> channel = advisory.leadFacts(facts);
    return switch (lead.rule().advise()) {
      case CHECK_LINK ->
          advisory.isHeld()
              ? words.linkUnsteady()
              : words.linkLost(facts.situation().secondsSilent());
      case READ_CODES -> codeWords.saying(lead.rule(), facts);
      case WATCH -> channel.map(words::mayReach).orElseGet(() -> words.ownWords(lead.rule()));
      case EASE ->
          channel.isPresent() && advisory.remedy().isPresent()
              ? easeWords.saying(channel.get(), advisory.remedy().get(), lead.rule().level(), facts)
              : words.ownWords(lead.rule());
      case CLIMB_AHEAD,
          RECOVER,
          IDLE,
          STOP_AND_LOOK,
          CHECK_FAN,
          CHECK_PUMP,
          CHECK_COOLER,
          CHECK_SENSOR,
          CHECK_CHARGING,
          CONFIRM_LIMIT ->
          causeWords.saying(lead.rule(), channel, facts);
    };
  }

  private static AdviceLine.State state(Advisory advisory, Rule rule) {
    return switch (rule.advise()) {
      case CHECK_LINK ->
          advisory.isHeld() ? AdviceLine.State.MAY_REACH : AdviceLine.State.LINK_LOST;
      case READ_CODES ->
          rule.level() == Level.NOTICE
              ? AdviceLine.State.CODE_STORED
              : AdviceLine.State.LIMITED_POWER;
      case EASE,
          WATCH,
          CLIMB_AHEAD,
          RECOVER,
          IDLE,
          STOP_AND_LOOK,
          CHECK_FAN,
          CHECK_PUMP,
          CHECK_COOLER,
          CHECK_SENSOR,
          CHECK_CHARGING,
          CONFIRM_LIMIT ->
          switch (rule.level()) {
            case NOTICE -> AdviceLine.State.MAY_REACH;
            case CAUTION -> AdviceLine.State.ADVISE;
            case WARNING -> AdviceLine.State.ACT_NOW;
          };
    };
  }

  private static AdviceLine.Response response(AdvisoryState state) {
    return switch (state) {
      case AdvisoryState.Normal _,
          AdvisoryState.Suppressed _,
          AdvisoryState.Returned _,
          AdvisoryState.Unacknowledged _ ->
          new AdviceLine.Response.None();
      case AdvisoryState.Acknowledged(long at) -> new AdviceLine.Response.Acknowledged(at);
      case AdvisoryState.Shelved(long until, Urgency urgency) ->
          new AdviceLine.Response.Snoozed(until);
    };
  }
}
