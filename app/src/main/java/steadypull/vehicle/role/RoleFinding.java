package steadypull.vehicle.role;

import java.util.Objects;
import steadypull.channel.Channel;

/** What the evidence says about the sensor of one channel. A closed set. */
public sealed interface RoleFinding {

  /** The channel in question. */
  Channel channel();

  /**
   * A sensor that behaves as one in this place does; for a person to confirm.
   *
   * @param signalKey key of its signal, such as {@code 01.77.1}
   * @param confidence how sure
   * @param reason why
   */
  record Proposed(Channel channel, String signalKey, Confidence confidence, Reason reason)
      implements RoleFinding {
    public Proposed {
      Objects.requireNonNull(channel);
      Objects.requireNonNull(signalKey);
      Objects.requireNonNull(confidence);
      Objects.requireNonNull(reason);
    }
  }

  /** The evidence does not tell, or not yet. */
  record CannotTell(Channel channel, Missing missing) implements RoleFinding {
    public CannotTell {
      Objects.requireNonNull(channel);
      Objects.requireNonNull(missing);
    }
  }

  /** How sure a proposal is. */
  enum Confidence {
    /** Its figures stand far from those of every other place. */
    CLEAR,
    /** Its figures fit, but another place is not ruled out. */
    LIKELY
  }
}
