package steadypull.adapter.diagnostic;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * What one round of asking for trouble codes brought. Immutable.
 *
 * @param answeredBy by status the addresses of the control units that answered, be it with no code;
 *     where nobody did, the status is absent and nobody can tell
 * @param found the codes, in the order of status, control unit and answer
 */
public record TroubleCodeReport(Map<CodeStatus, Set<String>> answeredBy, List<Found> found) {
  public TroubleCodeReport {
    Map<CodeStatus, Set<String>> copy = new EnumMap<>(CodeStatus.class);
    answeredBy.forEach((status, units) -> copy.put(status, Set.copyOf(units)));
    answeredBy = Collections.unmodifiableMap(copy);
    found = List.copyOf(found);
    for (Found each : found) {
      if (!copy.getOrDefault(each.status(), Set.of()).contains(each.controlUnit())) {
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
