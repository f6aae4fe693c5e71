package steadypull.demo.bench;

import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The trouble codes of one control unit and what it remembers of the moment at which the first was
 * stored. Times are seconds on the bench's clock.
 */
final class TroubleMemory {
  private static final int PENDING = 0x07;
  private static final int FREEZING_CODE = 0x02;
  private static final byte[] NO_CODE = {0, 0};

  private final List<StoredCode> codes;
  private final NavigableMap<Integer, byte[]> frozen = new TreeMap<>();

  TroubleMemory(List<StoredCode> codes) {
    this.codes = List.copyOf(codes);
  }

  /** The codes that service 03, 07 or 0A tells at a time, two bytes each. */
  List<byte[]> codes(int service, double seconds) {
    return codes.stream()
        .filter(code -> seconds >= code.fromSeconds())
        .filter(code -> code.isConfirmed() || service == PENDING)
        .map(StoredCode::bytes)
        .toList();
  }

  /** The code whose moment is to be remembered, until it is. */
  Optional<StoredCode> toFreeze() {
    return frozen.isEmpty()
        ? codes.stream()
            .filter(StoredCode::isConfirmed)
            .min((one, other) -> Double.compare(one.fromSeconds(), other.fromSeconds()))
        : Optional.empty();
  }

  /** Remembers the present moment as that of a code. */
  void freeze(StoredCode code, Parameters parameters) {
    frozen.putAll(parameters.snapshot());
    frozen.put(FREEZING_CODE, code.bytes());
  }

  /** Data of a parameter at the remembered moment, or the map of these; empty if there is none. */
  byte[] frozen(int parameter) {
    if (parameter % 0x20 == 0) {
      return frozen.tailMap(parameter, false).isEmpty()
          ? new byte[0]
          : Parameters.map(frozen.navigableKeySet(), parameter);
    }
    byte[] otherwise = parameter == FREEZING_CODE ? NO_CODE : new byte[0];
    return frozen.getOrDefault(parameter, otherwise).clone();
  }
}
