package steadypull.advice;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** The line while no advisory speaks: it holds, it may not, or it cannot be told yet. */
final class CalmLines {
  /** At most this probability for every channel counts as holding. */
  private static final double HOLDS_PROBABILITY = 0.05;

  private final AdviceWords words;

  CalmLines(AdviceWords words) {
    this.words = words;
  }

  AdviceLine line(SituationFacts facts) {
    List<ChannelFacts> judged = judged(facts).toList();
    if (judged.isEmpty()) {
      return learning(words.text("reason.learning"));
    }
    ChannelFacts likeliest =
        judged.stream().max(Comparator.comparingDouble(CalmLines::probability)).orElseThrow();
    return probability(likeliest) > HOLDS_PROBABILITY
        ? line(AdviceLine.State.MAY_REACH, words.mayReach(likeliest), Optional.of(likeliest))
        : holding(facts, judged);
  }

  /** Whether every channel that can be judged keeps under its limit. */
  boolean holds(SituationFacts facts) {
    return judged(facts).allMatch(each -> probability(each) <= HOLDS_PROBABILITY);
  }

  private AdviceLine holding(SituationFacts facts, List<ChannelFacts> judged) {
    ChannelFacts least =
        judged.stream().min(Comparator.comparingDouble(LeastHeadroom::of)).orElseThrow();
    List<ChannelFacts> blind =
        facts.channels().values().stream()
            .filter(each -> each.limit().isPresent() && each.forecast().isEmpty())
            .toList();
    return line(AdviceLine.State.HOLDS, words.holds(least, blind), Optional.of(least));
  }

  AdviceLine learning(String reason) {
    return line(
        AdviceLine.State.LEARNING,
        new AdviceWords.Saying(words.text("action.learning"), reason),
        Optional.empty());
  }

  private static Stream<ChannelFacts> judged(SituationFacts facts) {
    return facts.channels().values().stream().filter(each -> each.toLimit().isPresent());
  }

  private static double probability(ChannelFacts facts) {
    return facts.isOverLimit() ? 1 : facts.probabilityInTime().orElse(0);
  }

  private static AdviceLine line(
      AdviceLine.State state, AdviceWords.Saying saying, Optional<ChannelFacts> channel) {
    return new AdviceLine(
        state,
        new AdviceLine.Response.None(),
        saying.action(),
        saying.reason(),
        channel.map(ChannelFacts::channel),
        OptionalDouble.empty());
  }
}
