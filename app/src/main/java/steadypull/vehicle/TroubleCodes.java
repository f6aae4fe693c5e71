package steadypull.vehicle;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The trouble codes that a vehicle's control units told when they were asked last. Immutable.
 *
 * @param told the statuses that somebody answered for; of the others nobody can tell
 * @param codes what was found, in the order in which it was told
 */
public record TroubleCodes(Set<Status> told, List<Code> codes) {
  public TroubleCodes {
    told = Set.copyOf(told);
    codes = List.copyOf(codes);
  }

  /** Nobody was asked, or nobody answered. */
  public static TroubleCodes unknown() {
    return new TroubleCodes(Set.of(), List.of());
  }

  /** How sure a control unit is. */
  public enum Status {
    /** Confirmed and kept. */
    STORED,
    /** Seen, not confirmed yet. */
    PENDING,
    /** Kept until the control unit itself finds the fault gone. */
    PERMANENT;

    /** The word used in files and command output. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** The status of that word, or empty if there is none. */
    public static Optional<Status> of(String word) {
      return Stream.of(values()).filter(status -> status.word().equals(word)).findFirst();
    }
  }

  /**
   * One code.
   *
   * @param text as ISO 15031-6 writes it, such as {@code P0299}
   * @param meaning what the standard means by it, in the reader's language; empty if unknown
   * @param status how sure the control unit is
   * @param controlUnit address of the control unit that told it
   * @param cameUpMicros when it was first told in this trip, microseconds since its start; empty if
   *     it was there when the vehicle was asked first
   */
  public record Code(
      String text,
      Optional<String> meaning,
      Status status,
      String controlUnit,
      OptionalLong cameUpMicros) {
    public Code {
      Objects.requireNonNull(text);
      Objects.requireNonNull(meaning);
      Objects.requireNonNull(status);
      Objects.requireNonNull(controlUnit);
    }

    /** Code and meaning in one line: {@code P0299, turbocharger A underboost}. */
    public String line() {
      return meaning.map(words -> text + ", " + words).orElse(text);
    }
  }

  /** Whether it is known which codes are stored, be it none. */
  public boolean isStoredKnown() {
    return told.contains(Status.STORED);
  }

  /** The stored codes, each text once, those that came up last first. */
  public List<Code> stored() {
    Map<String, Code> byText = new LinkedHashMap<>();
    codes.stream()
        .filter(each -> each.status() == Status.STORED)
        .sorted(Comparator.comparingLong(TroubleCodes::cameUp).reversed())
        .forEach(each -> byText.putIfAbsent(each.text(), each));
    return List.copyOf(byText.values());
  }

  private static long cameUp(Code code) {
    return code.cameUpMicros().orElse(-1);
  }
}
