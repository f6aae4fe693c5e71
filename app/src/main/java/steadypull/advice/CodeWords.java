package steadypull.advice;

import java.util.List;
import java.util.stream.Collectors;
import steadypull.vehicle.TroubleCodes;

/**
 * Says what stored trouble codes ask for: a workshop. What a code means in this vehicle, and what
 * is to be done about it, is a workshop's business.
 */
final class CodeWords {
  /** More codes would make no text that anybody reads. */
  private static final int MOST_NAMED = 3;

  /** A longer meaning would make the line too small to be read. */
  private static final int MOST_LETTERS = 45;

  private final AdviceWords words;

  CodeWords(AdviceWords words) {
    this.words = words;
  }

  AdviceWords.Saying saying(Rule rule, SituationFacts facts) {
    if (facts.isPowerLimited()) {
      return powerLimited(facts);
    }
    List<TroubleCodes.Code> stored = facts.codes().stored();
    return stored.isEmpty() ? words.ownWords(rule) : newCode(stored.getFirst());
  }

  private AdviceWords.Saying powerLimited(SituationFacts facts) {
    TroubleCodes codes = facts.codes();
    if (codes.stored().isEmpty()) {
      String reason = codes.isStoredKnown() ? "reason.power-limited-none" : "reason.power-limited";
      String cut = words.quantities().whole(facts.powerCutPercent());
      return new AdviceWords.Saying(words.text("action.power-limited"), words.text(reason, cut));
    }
    return new AdviceWords.Saying(
        words.text("action.power-limited-code", codes.stored().getFirst().text()),
        words.text("reason.power-limited-code", meaning(codes.stored().getFirst())));
  }

  private AdviceWords.Saying newCode(TroubleCodes.Code code) {
    return new AdviceWords.Saying(
        words.text("action.new-code", code.text()), words.text("reason.new-code", meaning(code)));
  }

  /** The stored codes in one sentence; empty if none are known. */
  String stored(TroubleCodes codes) {
    return codes.stored().isEmpty() ? "" : words.text("code.stored", lines(codes));
  }

  private String meaning(TroubleCodes.Code code) {
    if (code.meaning().isEmpty()) {
      return words.text("code.unknown");
    }
    String meaning = code.meaning().get();
    return meaning.length() <= MOST_LETTERS ? words.sentence(meaning) : words.text("code.in-menu");
  }

  private static String lines(TroubleCodes codes) {
    return codes.stored().stream()
        .limit(MOST_NAMED)
        .map(TroubleCodes.Code::line)
        .collect(Collectors.joining("; "));
  }
}
