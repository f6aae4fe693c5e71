package steadypull.advice;

import dev.cel.common.CelErrorCode;
import dev.cel.runtime.CelEvaluationException;
import dev.cel.runtime.CelRuntime;
import java.util.Map;

/**
 * A compiled condition. A quantity that nobody has heard is absent from the variables; a condition
 * that hangs on it then cannot tell, unless the rest of it decides anyway. Immutable.
 */
final class Condition {
  private final CelRuntime.Program program;

  Condition(CelRuntime.Program program) {
    this.program = program;
  }

  /** The three answers of a condition. */
  enum Truth {
    MET,
    NOT_MET,
    CANNOT_TELL
  }

  /**
   * Judges the variables by {@link RuleVariable#id()}.
   *
   * @throws RuleFailure if the expression breaks, as by a number out of range
   */
  Truth judge(Map<String, Object> variables) throws RuleFailure {
    try {
      return program.eval(variables) instanceof Boolean isMet && isMet ? Truth.MET : Truth.NOT_MET;
    } catch (CelEvaluationException broken) {
      // Names are checked when the rule is loaded, so an absent one is a quantity not heard.
      if (broken.getErrorCode() == CelErrorCode.ATTRIBUTE_NOT_FOUND) {
        return Truth.CANNOT_TELL;
      }
      throw new RuleFailure(String.valueOf(broken.getMessage()), broken);
    }
  }
}
