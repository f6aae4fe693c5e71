package steadypull.advice;

import java.util.Optional;
import java.util.OptionalLong;
import steadypull.channel.Channel;

/** One rule over one channel (or the vehicle) with its delays: the part that cannot chatter. */
final class RuleWatch {
  /** How long a raised rule waits for a quantity that went missing (common practice, no source). */
  private static final double PATIENCE_SECONDS = 30;

  private final Rule rule;
  private final Optional<Channel> channel;
  private boolean isRaised;
  private Condition.Truth truth = Condition.Truth.CANNOT_TELL;

  /** Since when the truth has spoken for the other state. */
  private OptionalLong turningSince = OptionalLong.empty();

  private boolean isSuppressed;
  private long raisedMicros;

  /** Whether a rule that speaks once a trip has spoken. */
  private boolean isSaid;

  RuleWatch(Rule rule, Optional<Channel> channel) {
    this.rule = rule;
    this.channel = channel;
  }

  Rule rule() {
    return rule;
  }

  Optional<Channel> channel() {
    return channel;
  }

  String ruleId() {
    return rule.idFor(channel);
  }

  boolean isRaised() {
    return isRaised;
  }

  /** Whether it is raised and its condition holds at this moment, not only by the off-delay. */
  boolean isPressing() {
    return isRaised && truth == Condition.Truth.MET;
  }

  Urgency urgency() {
    return new Urgency(rule.level(), rule.priority());
  }

  /** Whether it does not apply now, by design. */
  boolean isSuppressed() {
    return isSuppressed;
  }

  /** Moves on to a moment; times rise. */
  void step(SituationFacts facts) throws RuleFailure {
    if (rule.suppressedWhile().isPresent()
        && judge(rule.suppressedWhile().get(), facts, 0) == Condition.Truth.MET) {
      suppress();
      return;
    }
    isSuppressed = false;
    Condition condition = isRaised ? rule.staysWhile() : rule.raisesWhen();
    truth = judge(condition, facts, isRaised ? rule.deadbandKelvin() : 0);
    if (isRaised != (truth == Condition.Truth.MET)) {
      turn(facts.timeMicros());
    } else {
      turningSince = OptionalLong.empty();
    }
    letGoOfWhatIsSaid(facts.timeMicros());
  }

  private Condition.Truth judge(Condition condition, SituationFacts facts, double hotterBy)
      throws RuleFailure {
    return condition.judge(
        channel.map(each -> facts.variables(each, hotterBy)).orElseGet(facts::variables));
  }

  private void turn(long timeMicros) {
    long since = turningSince.orElse(timeMicros);
    turningSince = OptionalLong.of(since);
    if (timeMicros - since >= delayMicros()) {
      isRaised = !isRaised && !isSaid;
      raisedMicros = timeMicros;
      turningSince = OptionalLong.empty();
    }
  }

  private void letGoOfWhatIsSaid(long timeMicros) {
    if (isRaised && rule.onceSeconds() > 0) {
      isSaid = true;
      isRaised = timeMicros - raisedMicros < rule.onceSeconds() * 1e6;
    }
  }

  private long delayMicros() {
    if (!isRaised) {
      return Math.round(rule.onDelaySeconds() * 1e6);
    }
    double patience = truth == Condition.Truth.CANNOT_TELL ? PATIENCE_SECONDS : 0;
    return Math.round(Math.max(patience, rule.offDelaySeconds()) * 1e6);
  }

  /** Nothing can be judged for a while: the state stands, and delays begin anew afterwards. */
  void pause() {
    turningSince = OptionalLong.empty();
  }

  /** Lets go at once: the whole rule does not apply now, by design. */
  void suppress() {
    isSuppressed = true;
    isRaised = false;
    truth = Condition.Truth.CANNOT_TELL;
    turningSince = OptionalLong.empty();
  }
}
