package steadypull.drive;

import java.util.Objects;

/**
 * What was found on a port.
 *
 * @param isAdapter whether an adapter answers
 * @param isVehicle whether a vehicle answers behind it
 * @param sentence what was found, and what to do where something is missing
 */
public record PortFinding(boolean isAdapter, boolean isVehicle, String sentence) {
  public PortFinding {
    Objects.requireNonNull(sentence);
  }
}
