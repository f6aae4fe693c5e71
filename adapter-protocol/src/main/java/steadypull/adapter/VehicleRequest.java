package steadypull.adapter;

import java.util.Objects;
import java.util.Optional;
import steadypull.adapter.frame.Payload;

/**
 * One question to the vehicle. Immutable.
 *
 * @param unit request header of the one control unit that is asked, in hex digits such as {@code
 *     7E1} or {@code 18DA18F1}; empty to ask everybody
 * @param payload service and what follows, 1 to 7 bytes
 * @param answerBytes payload bytes of the answer, where exactly one control unit will answer and
 *     its length was learnt; 0 where that is not known
 */
record VehicleRequest(Optional<String> unit, Payload payload, int answerBytes) {
  private static final int MOST_BYTES = 7;

  VehicleRequest {
    Objects.requireNonNull(unit);
    if (payload.size() < 1 || payload.size() > MOST_BYTES || answerBytes < 0) {
      throw new IllegalArgumentException(
          "A request has 1 to 7 bytes and its answer 0 or more, found %s and %d"
              .formatted(payload, answerBytes));
    }
  }

  /** Asks everybody, bytes in hex; how many answer and how long is not known. */
  static VehicleRequest toEverybody(String hex) {
    return new VehicleRequest(Optional.empty(), Payload.ofHex(hex), 0);
  }

  /** Asks one control unit by its request header, bytes in hex. */
  static VehicleRequest to(String unit, String hex) {
    return new VehicleRequest(Optional.of(unit), Payload.ofHex(hex), 0);
  }
}
