package steadypull.adapter;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import steadypull.adapter.diagnostic.SupportMap;
import steadypull.adapter.frame.Payload;

/**
 * Which control units will answer a question to everybody: those whose support maps hold any of the
 * parameters asked for; the others keep silent (SAE J1979). Learns the maps from the answers that
 * go by. Reader thread only.
 */
final class WhoAnswers {
  private static final int CURRENT_DATA = 0x01;
  private static final int BY_IDENTIFIER = 0x22;
  private static final int POSITIVE = 0x40;

  /** Data identifiers F400 to F4FF are the parameters (SAE J1979-2, from memory). */
  private static final int PARAMETER_BLOCK = 0xF4;

  private final Map<String, SupportMap> maps = new TreeMap<>();

  /** Forgets everybody: another search begins. */
  void clear() {
    maps.clear();
  }

  /** Takes one answer to a question; what is no support map changes nothing. */
  void learn(Payload question, String sender, Payload answer) {
    int numberAt = numberAt(question);
    boolean isOne = question.size() == numberAt + 1 && isParameters(question);
    if (isOne && SupportMap.isMap(question.at(numberAt)) && isAnswer(question, answer)) {
      SupportMap before = maps.getOrDefault(sender, SupportMap.empty());
      maps.put(sender, before.with(question.at(numberAt), answer.from(question.size())));
    }
  }

  private static boolean isAnswer(Payload question, Payload answer) {
    if (answer.size() < question.size() || answer.at(0) != question.at(0) + POSITIVE) {
      return false;
    }
    return answer.slice(1, question.size()).equals(question.from(1));
  }

  /** Senders of the answers to come; empty where that cannot be told. */
  Set<String> to(Payload question) {
    Set<String> senders = new HashSet<>();
    if (!isParameters(question)) {
      return senders;
    }
    for (int i = numberAt(question); i < question.size(); i += numberAt(question)) {
      int number = question.at(i);
      if (SupportMap.isMap(number)) {
        return Set.of();
      }
      maps.forEach(
          (sender, map) -> {
            if (map.supports(number)) {
              senders.add(sender);
            }
          });
    }
    return senders;
  }

  /** Where the first number stands, which is also how far one is from the next. */
  private static int numberAt(Payload question) {
    return question.at(0) == BY_IDENTIFIER ? 2 : 1;
  }

  private static boolean isParameters(Payload question) {
    if (question.at(0) != BY_IDENTIFIER) {
      return question.at(0) == CURRENT_DATA;
    }
    boolean isWhole = question.size() > 2 && question.size() % 2 == 1;
    for (int i = 1; isWhole && i < question.size(); i += 2) {
      isWhole = question.at(i) == PARAMETER_BLOCK;
    }
    return isWhole;
  }
}
