package steadypull.demo.bench;

import java.util.Map;
import java.util.Objects;
import java.util.function.Supplier;

/**
 * A control unit: its addresses and what it can tell, whatever the bus and the services.
 *
 * @param node its address where addresses have one byte, such as 10
 * @param requestAddress address of physical requests on CAN with 11 bits, such as 7E0; answers
 *     carry it plus 8
 * @param parameters current data
 * @param information what it tells about itself and the vehicle
 * @param identifiers what its maker put behind identifiers of two bytes
 * @param mostIdentifiers how many of these it lets one request ask for, 1 to 3
 * @param troubles the codes that it notices
 */
record ControlUnit(
    int node,
    int requestAddress,
    Parameters parameters,
    Information information,
    Map<Integer, Supplier<byte[]>> identifiers,
    int mostIdentifiers,
    TroubleMemory troubles) {
  ControlUnit {
    Objects.requireNonNull(parameters);
    Objects.requireNonNull(information);
    Objects.requireNonNull(troubles);
    identifiers = Map.copyOf(identifiers);
  }
}
