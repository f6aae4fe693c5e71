package steadypull.adapter;

import java.util.Objects;
import steadypull.adapter.diagnostic.Signal;

/**
 * One value as a control unit answered it, stamped when its last byte arrived. Immutable.
 *
 * @param controlUnit the address that answered, as printed in the message header, such as {@code
 *     7E8}; upper-case hex
 * @param signal what was read
 * @param value the decoded value in the signal's unit, finite
 * @param nanoTime arrival on the link's clock, nanoseconds
 */
public record Reading(String controlUnit, Signal signal, double value, long nanoTime) {
  public Reading {
    Objects.requireNonNull(controlUnit);
    Objects.requireNonNull(signal);
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("A reading is finite, found " + value);
    }
  }
}
