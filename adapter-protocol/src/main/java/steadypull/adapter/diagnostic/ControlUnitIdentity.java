package steadypull.adapter.diagnostic;

import java.util.List;
import java.util.Objects;

/**
 * What a control unit says about itself. Immutable.
 *
 * @param controlUnit address as printed in the message header
 * @param name what it calls itself, such as {@code ECM EngineControl}; empty text if it does not
 * @param calibrations which software and data it works with; may be empty
 * @param verificationNumbers check values of the calibrations, hex; may be empty
 */
public record ControlUnitIdentity(
    String controlUnit, String name, List<String> calibrations, List<String> verificationNumbers) {
  public ControlUnitIdentity {
    Objects.requireNonNull(controlUnit);
    Objects.requireNonNull(name);
    calibrations = List.copyOf(calibrations);
    verificationNumbers = List.copyOf(verificationNumbers);
  }
}
