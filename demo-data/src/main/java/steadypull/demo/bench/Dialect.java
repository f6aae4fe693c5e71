package steadypull.demo.bench;

import java.util.List;

/** How a control unit understands requests and puts its answers, without transport bytes. */
interface Dialect {

  /**
   * Answers a request of one byte or more.
   *
   * @param isFunctional whether the request went to everybody; then what is not supported is met
   *     with silence (ISO 15031-5, from memory)
   * @param seconds when, on the bench's clock
   * @return the messages of the answer; empty for silence
   */
  List<byte[]> answer(ControlUnit unit, byte[] request, boolean isFunctional, double seconds);

  /** The dialect of a vehicle. */
  static Dialect of(VehicleTraits vehicle) {
    if (!vehicle.protocol().isCan()) {
      return new OlderDialect();
    }
    return vehicle.isUds() ? new IdentifierDialect() : new CanDialect();
  }
}
