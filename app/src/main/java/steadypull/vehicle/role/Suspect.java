package steadypull.vehicle.role;

import java.util.Objects;

/**
 * A sensor that is not to be believed.
 *
 * @param signalKey which
 * @param fault what is wrong with it
 */
public record Suspect(String signalKey, Fault fault) {
  public Suspect {
    Objects.requireNonNull(signalKey);
    Objects.requireNonNull(fault);
  }

  /** What is wrong. A closed set. */
  public sealed interface Fault {}

  /** It stands still whatever the engine does, and is left out. */
  public record Stuck(double celsius) implements Fault {}

  /**
   * After hours of rest it differed from outside air: its place may be told, its figures are in
   * doubt.
   *
   * @param kelvin by how much; positive is too hot
   */
  public record OffAfterRest(double kelvin) implements Fault {}
}
