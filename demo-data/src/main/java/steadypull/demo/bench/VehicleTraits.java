package steadypull.demo.bench;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What kind of vehicle stands on the bench.
 *
 * @param protocol its bus
 * @param isUds whether it answers ISO 14229 service 22 only, as SAE J1979-2 has it
 * @param latencyMillis how long control units take to answer, 0 to 5000; empty for the usual spread
 * @param codes the trouble codes that it notices
 * @param framesPerSecond what control units say to each other on its CAN bus, 0 to 5000; requests
 *     and answers apart
 */
record VehicleTraits(
    BusProtocol protocol,
    boolean isUds,
    OptionalDouble latencyMillis,
    List<StoredCode> codes,
    int framesPerSecond) {
  /** A vehicle like most: CAN, 11 bits, 500 kbit/s, no trouble. */
  static final VehicleTraits USUAL =
      new VehicleTraits(BusProtocol.CAN_11_500, false, OptionalDouble.empty(), List.of(), 0);

  VehicleTraits {
    Objects.requireNonNull(protocol);
    codes = List.copyOf(codes);
    if (isUds && !protocol.isCan()) {
      throw new IllegalArgumentException(
          "diagnostics=uds is a matter of CAN, found protocol " + protocol.number());
    }
    if (framesPerSecond < 0 || framesPerSecond > 5000) {
      throw new IllegalArgumentException(
          "traffic lies between 0 and 5000 frames a second, found " + framesPerSecond);
    }
    double latency = latencyMillis.orElse(0);
    if (!(latency >= 0 && latency <= 5000)) {
      throw new IllegalArgumentException("latency lies between 0 and 5000 ms, found " + latency);
    }
  }
}
