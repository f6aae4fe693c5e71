package steadypull.adapter.diagnostic;

import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * What one round of asking for trouble codes brought. Immutable.
 *
 * @param answered the statuses that at least one control unit answered for; of the others nobody
 *     can tell
 * @param found the codes, in the order of status, control unit and answer
 */
public record TroubleCodeReport(Set<CodeStatus> answered, List<Found> found) {
  public TroubleCodeReport {
    answered = Set.copyOf(answered);
    found = List.copyOf(found);
    for (Found each : found) {
      if (!answered.contains(each.status())) {
        throw new IllegalArgumentException(
            "A code is found where somebody answered, found %s without an answer".formatted(each));
      }
    }
  }

  /**
   * One code of one control unit.
   *
   * @param controlUnit address as printed in the message header, such as {@code 7E8}
   */
  public record Found(String controlUnit, TroubleCode code, CodeStatus status) {
    public Found {
      Objects.requireNonNull(controlUnit);
      Objects.requireNonNull(code);
      Objects.requireNonNull(status);
    }
  }

  /** Whether a control unit has the code stored. */
  public boolean isStored(String controlUnit, TroubleCode code) {
    return found.contains(new Found(controlUnit, code, CodeStatus.STORED));
  }
}
