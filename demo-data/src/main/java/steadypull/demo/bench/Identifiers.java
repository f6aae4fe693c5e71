package steadypull.demo.bench;

import static steadypull.demo.bench.Parameters.join;
import static steadypull.demo.bench.Parameters.number;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.function.IntFunction;

/** ISO 14229 service 22: identifiers of two bytes each, answered in the order of the request. */
final class Identifiers {
  private Identifiers() {}

  /**
   * Answers a request.
   *
   * @param data of an identifier; empty if there is none
   */
  static List<byte[]> answer(
      ControlUnit unit, byte[] request, boolean isFunctional, IntFunction<byte[]> data) {
    int asked = (request.length - 1) / 2;
    if (request.length % 2 == 0 || asked < 1 || asked > unit.mostIdentifiers()) {
      return Refusal.of(0x22, Refusal.INCORRECT_LENGTH, isFunctional);
    }
    ByteArrayOutputStream answer = new ByteArrayOutputStream();
    for (int i = 1; i < request.length; i += 2) {
      int identifier = (request[i] & 0xFF) << 8 | (request[i + 1] & 0xFF);
      byte[] bytes = data.apply(identifier);
      if (bytes.length > 0) {
        answer.writeBytes(join(number(identifier, 2), bytes));
      }
    }
    return answer.size() == 0
        ? Refusal.of(0x22, Refusal.REQUEST_OUT_OF_RANGE, isFunctional)
        : List.of(join(new byte[] {0x62}, answer.toByteArray()));
  }
}
