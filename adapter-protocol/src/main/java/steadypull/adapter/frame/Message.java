package steadypull.adapter.frame;

import java.util.Objects;

/**
 * A whole message of one control unit.
 *
 * @param controlUnit the sender as printed in the header: {@code 7E8}, {@code 18DAF110}, or the
 *     source byte {@code 10} on older buses; upper-case hex
 * @param payload service and data
 */
public record Message(String controlUnit, Payload payload) {
  public Message {
    Objects.requireNonNull(controlUnit);
    Objects.requireNonNull(payload);
  }
}
