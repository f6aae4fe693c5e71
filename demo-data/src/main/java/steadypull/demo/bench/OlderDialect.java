package steadypull.demo.bench;

import static steadypull.demo.bench.Parameters.join;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * SAE J1979 on the buses before CAN: seven bytes in a message at most, one parameter in a request,
 * codes by threes without a count, long information in numbered messages of four bytes (from
 * memory, as the sheet of services gives it).
 */
final class OlderDialect implements Dialect {
  private static final int CODES_PER_MESSAGE = 3;
  private static final int BYTES_PER_MESSAGE = 4;
  private static final int LONGEST = 7;

  @Override
  public List<byte[]> answer(
      ControlUnit unit, byte[] request, boolean isFunctional, double seconds) {
    int service = request[0] & 0xFF;
    return switch (service) {
      case 0x01 -> currentData(unit, request, isFunctional);
      case 0x02 -> frozenData(unit, request, isFunctional);
      case 0x03, 0x07 -> codes(service, unit.troubles().codes(service, seconds));
      case 0x09 -> information(unit, request, isFunctional);
      default -> Refusal.of(service, Refusal.SERVICE_NOT_SUPPORTED, isFunctional);
    };
  }

  private static List<byte[]> currentData(ControlUnit unit, byte[] request, boolean isFunctional) {
    byte[] data = request.length == 2 ? unit.parameters().answer(request) : new byte[0];
    return fitting(join(new byte[] {0x41}, data), data, isFunctional);
  }

  private static List<byte[]> frozenData(ControlUnit unit, byte[] request, boolean isFunctional) {
    boolean isPair = request.length == 3 && request[2] == 0;
    byte[] data = isPair ? unit.troubles().frozen(request[1] & 0xFF) : new byte[0];
    byte[] head = {0x42, request.length > 1 ? request[1] : 0, 0};
    return fitting(join(head, data), data, isFunctional);
  }

  private static List<byte[]> fitting(byte[] message, byte[] data, boolean isFunctional) {
    return data.length == 0 || message.length > LONGEST
        ? Refusal.of((message[0] & 0xFF) - 0x40, Refusal.SUB_FUNCTION_NOT_SUPPORTED, isFunctional)
        : List.of(message);
  }

  /** At least one message, filled up with zeros. */
  private static List<byte[]> codes(int service, List<byte[]> codes) {
    List<byte[]> messages = new ArrayList<>();
    for (int from = 0; from == 0 || from < codes.size(); from += CODES_PER_MESSAGE) {
      List<byte[]> some = codes.subList(from, Math.min(codes.size(), from + CODES_PER_MESSAGE));
      byte[] head = {(byte) (service + 0x40)};
      byte[] message = join(head, join(some.toArray(new byte[0][])));
      messages.add(Arrays.copyOf(message, 1 + 2 * CODES_PER_MESSAGE));
    }
    return messages;
  }

  /** Filled up with zeros before, cut into fours. */
  private static List<byte[]> information(ControlUnit unit, byte[] request, boolean isFunctional) {
    int type = request.length == 2 ? request[1] & 0xFF : -1;
    byte[] data = unit.information().data(type);
    if (data.length == 0) {
      return Refusal.of(0x09, Refusal.SUB_FUNCTION_NOT_SUPPORTED, isFunctional);
    }
    int parts = (data.length + BYTES_PER_MESSAGE - 1) / BYTES_PER_MESSAGE;
    byte[] padded = join(new byte[parts * BYTES_PER_MESSAGE - data.length], data);
    List<byte[]> messages = new ArrayList<>();
    for (int part = 0; part < parts; part++) {
      int from = part * BYTES_PER_MESSAGE;
      byte[] head = {0x49, (byte) type, (byte) (part + 1)};
      messages.add(join(head, Arrays.copyOfRange(padded, from, from + BYTES_PER_MESSAGE)));
    }
    return messages;
  }
}
