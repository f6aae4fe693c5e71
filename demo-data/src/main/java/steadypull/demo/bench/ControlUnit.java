package steadypull.demo.bench;

import java.util.Optional;

/**
 * A control unit on the vehicle's bus: takes the payload of one request, gives the payload of one
 * answer, both without transport bytes.
 */
interface ControlUnit {

  /** Address of physical requests, 11 bits, such as 7E0; answers carry it plus 8. */
  int requestAddress();

  /**
   * Answers a request.
   *
   * @param isFunctional whether the request went to everybody; then what is not supported is met
   *     with silence (ISO 15031-5, from memory)
   * @return the answer, or empty for silence
   */
  Optional<byte[]> answer(byte[] request, boolean isFunctional);
}
