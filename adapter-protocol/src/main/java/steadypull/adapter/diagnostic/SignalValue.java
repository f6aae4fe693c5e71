package steadypull.adapter.diagnostic;

import java.util.Objects;

/**
 * A decoded value.
 *
 * @param signal what it is a value of
 * @param value in the signal's unit, finite
 */
public record SignalValue(Signal signal, double value) {
  public SignalValue {
    Objects.requireNonNull(signal);
  }
}
