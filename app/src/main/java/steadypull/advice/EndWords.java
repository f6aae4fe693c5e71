package steadypull.advice;

import java.util.Optional;

/** Says what is over, of its own channel and never with a time to come. Immutable. */
final class EndWords {
  private final AdviceWords words;

  EndWords(AdviceWords words) {
    this.words = words;
  }

  /** What has ended with an advisory that has just been cleared. */
  String cleared(Advisory advisory, SituationFacts facts) {
    RuleWatch lead = advisory.lead().orElseThrow();
    return switch (lead.rule().advise()) {
      case EASE, WATCH -> holdsAgain(advisory, lead, facts);
      case CHECK_LINK -> words.text("end.link");
      case CHECK_SENSOR -> ofChannel("end.heard", lead);
      case CLIMB_AHEAD,
          RECOVER,
          IDLE,
          STOP_AND_LOOK,
          CHECK_FAN,
          CHECK_PUMP,
          CHECK_COOLER,
          CHECK_CHARGING,
          CONFIRM_LIMIT,
          READ_CODES ->
          words.text("end.over");
    };
  }

  private String holdsAgain(Advisory advisory, RuleWatch lead, SituationFacts facts) {
    Optional<ChannelFacts> channel = advisory.leadFacts(facts);
    if (lead.channel().isEmpty()) {
      return words.text("end.over");
    }
    if (channel.isEmpty() || channel.get().value().isEmpty()) {
      return ofChannel("end.unheard", lead);
    }
    boolean isSaidInFull = advisory.state() instanceof AdvisoryState.Returned;
    return isSaidInFull
        ? words.back(channel.get(), advisory.hasBeenOver(), advisory.secondsDerated())
        : ofChannel("end.holds", lead);
  }

  private String ofChannel(String key, RuleWatch lead) {
    return lead.channel()
        .map(each -> words.text(key, words.channel(each)))
        .orElseGet(() -> words.text("end.over"));
  }
}
