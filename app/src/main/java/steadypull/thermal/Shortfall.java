package steadypull.thermal;

import java.util.Objects;
import java.util.Optional;

/** How much of the torque that is asked for is missing at one moment. A closed set. */
sealed interface Shortfall {

  /** Nothing tells what is asked for, or what is given. */
  record Untold() implements Shortfall {}

  /** Nobody asks for much, or what is asked for is given. */
  record Satisfied() implements Shortfall {}

  /**
   * Torque is missing.
   *
   * @param percent all that is missing, percentage points
   * @param newPercent of it what was not missing before a channel got hot, 0 or more
   * @param loss the latter in absolute units, if they can be told
   */
  record Missing(double percent, double newPercent, Optional<Derate.Loss> loss)
      implements Shortfall {
    public Missing {
      Objects.requireNonNull(loss);
    }
  }
}
