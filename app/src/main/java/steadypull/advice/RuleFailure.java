package steadypull.advice;

import org.jspecify.annotations.Nullable;

/** A condition that broke while it was evaluated. */
final class RuleFailure extends Exception {
  RuleFailure(String message, @Nullable Throwable cause) {
    super(message, cause);
  }
}
