package steadypull.drive;

import java.util.List;

/**
 * What was found on a port, walking the connection upwards.
 *
 * @param isAdapter whether an adapter answers
 * @param isVehicle whether a vehicle answers behind it
 * @param lines the steps in their order, and what to do where one does not hold
 */
public record PortFinding(boolean isAdapter, boolean isVehicle, List<String> lines) {
  public PortFinding {
    lines = List.copyOf(lines);
  }
}
