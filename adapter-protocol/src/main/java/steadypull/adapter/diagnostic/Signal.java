package steadypull.adapter.diagnostic;

import java.util.Objects;

/**
 * One quantity that a request can bring: a parameter, or one sensor of a parameter that carries
 * several. Immutable; equal by key.
 *
 * @param key service and identifier in hex and, where a parameter carries several values, the
 *     standard's number of the value counted from 1: {@code 01.05}, {@code 01.67.2}; for a
 *     vehicle's own signal the identifier and its first bit: {@code 22.1E1C.0}
 * @param name the standard's or the user's name, for people
 * @param unit the unit as the contracts print it: {@code degC}, {@code kPa}, {@code r/min}, {@code
 *     1}
 */
public record Signal(String key, String name, String unit) {
  public Signal {
    Objects.requireNonNull(key);
    Objects.requireNonNull(name);
    Objects.requireNonNull(unit);
  }
}
