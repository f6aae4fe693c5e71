package steadypull.demo.bench;

import java.util.OptionalLong;

/**
 * How long an adapter takes to find the vehicle's protocol: each try takes its time, the wanted one
 * comes first, then the others by their numbers.
 */
final class ProtocolSearch {
  private ProtocolSearch() {}

  /**
   * The span until a protocol is found.
   *
   * @param first number of the one to be tried first; 0 for none
   */
  static long untilFound(BusProtocol sought, char first) {
    if (first == sought.number()) {
      return sought.tryingNanos();
    }
    long span = wanted(first).orElse(0L);
    for (BusProtocol each : BusProtocol.values()) {
      span += each.number() == first ? 0 : each.tryingNanos();
      if (each == sought) {
        break;
      }
    }
    return span;
  }

  /** The span until an adapter gives up. */
  static long untilGivenUp() {
    long span = 0;
    for (BusProtocol each : BusProtocol.values()) {
      span += each.tryingNanos();
    }
    return span;
  }

  private static OptionalLong wanted(char first) {
    for (BusProtocol each : BusProtocol.values()) {
      if (each.number() == first) {
        return OptionalLong.of(each.tryingNanos());
      }
    }
    return OptionalLong.empty();
  }
}
