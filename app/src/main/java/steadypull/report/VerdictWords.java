package steadypull.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.compare.Comparison;
import steadypull.compare.GainAt;
import steadypull.compare.Side;
import steadypull.compare.Verdict;
import steadypull.thermal.Belief;

/** Puts the verdict into a sentence that claims no more than its interval bears. Immutable. */
final class VerdictWords {
  private static final int DELAY_SECONDS = 60;

  private final ReportWords words;
  private final FigureText figures;
  private final Comparison comparison;

  VerdictWords(ReportWords words, FigureText figures, Comparison comparison) {
    this.words = words;
    this.figures = figures;
    this.comparison = comparison;
  }

  /** The claim. */
  String claim() {
    if (comparison.verdict() != Verdict.NOT_PROVEN && comparison.settledGain().isPresent()) {
      return settled(comparison.settledGain().get());
    }
    Optional<Belief> delay = delay();
    if (comparison.delayVerdict() != Verdict.NOT_PROVEN && delay.isPresent()) {
      return delayed(delay.get());
    }
    return notProven();
  }

  private String delayed(Belief gain) {
    OptionalDouble alike = comparison.equivalentWithin();
    return words.say(
        alike.isPresent() ? "verdict.delayedOnly" : "verdict.delayed",
        word(comparison.delayVerdict()),
        channel(),
        figures.change(gain.middle()),
        figures.range(gain),
        alike.isPresent() ? figures.difference(alike.getAsDouble()) : "");
  }

  private String settled(Belief gain) {
    return words.say(
        "verdict.settled",
        word(comparison.verdict()),
        channel(),
        figures.change(gain.middle()),
        figures.range(gain));
  }

  private String notProven() {
    if (comparison.equivalentWithin().isPresent()) {
      return words.say(
          "verdict.equal",
          channel(),
          figures.difference(comparison.equivalentWithin().getAsDouble()));
    }
    return comparison
        .settledGain()
        .map(gain -> words.say("verdict.open", channel(), figures.span(gain)))
        .orElseGet(() -> words.say("verdict.unknown", channel()));
  }

  /** What proof still asks for; empty where it is proven, or a difference is excluded. */
  Optional<String> missing() {
    return missing("missing");
  }

  /** The same in few words. */
  Optional<String> missingShort() {
    return missing("short");
  }

  private Optional<String> missing(String form) {
    boolean isSettled =
        comparison.verdict() == Verdict.PROVEN || comparison.equivalentWithin().isPresent();
    List<String> asked = isSettled ? List.of() : asked(form);
    return asked.isEmpty()
        ? Optional.empty()
        : Optional.of(words.say(form, String.join(words.say(form + ".and"), asked)));
  }

  private List<String> asked(String form) {
    RunTally tally = RunTally.of(comparison.runs());
    List<String> asked = new ArrayList<>();
    if (!tally.hasRunsEnough()) {
      asked.add(
          words.say(
              form + ".runs",
              Integer.toString(comparison.runs().of(Side.BEFORE).size()),
              Integer.toString(comparison.runs().of(Side.AFTER).size())));
    }
    if (!tally.isSpread()) {
      asked.add(words.say(form + ".days"));
    }
    boolean isClaimed = comparison.verdict() == Verdict.LIKELY;
    if (!isClaimed) {
      asked.add(words.say(form + ".claim"));
    } else if (isBelowDetectable()) {
      asked.add(
          words.say(
              form + ".size", figures.difference(comparison.smallestDetectable().getAsDouble())));
    }
    return asked;
  }

  private boolean isBelowDetectable() {
    Optional<Belief> gain = comparison.settledGain();
    return gain.isPresent()
        && comparison.smallestDetectable().isPresent()
        && nearest(gain.get()) <= comparison.smallestDetectable().getAsDouble();
  }

  /** The bound that is nearer to no change, K. */
  private static double nearest(Belief gain) {
    return gain.middle() >= 0 ? gain.low() : -gain.high();
  }

  private Optional<Belief> delay() {
    return comparison.at().stream()
        .filter(at -> at.seconds() == DELAY_SECONDS)
        .findFirst()
        .flatMap(GainAt::gain);
  }

  private String word(Verdict verdict) {
    return words.say(
        switch (verdict) {
          case PROVEN -> "verdict.proven";
          case LIKELY -> "verdict.likely";
          case NOT_PROVEN -> "verdict.notProven";
        });
  }

  private String channel() {
    return words.name(comparison.channel());
  }
}
