package steadypull.demo.bench;

import static steadypull.demo.bench.Parameters.join;

import java.io.ByteArrayOutputStream;
import java.util.List;

/** SAE J1979 on CAN: several parameters in one request, counts before codes and items. */
final class CanDialect implements Dialect {
  private static final int MOST_PARAMETERS = 6;
  private static final int MOST_FROZEN = 3;

  @Override
  public List<byte[]> answer(
      ControlUnit unit, byte[] request, boolean isFunctional, double seconds) {
    int service = request[0] & 0xFF;
    return switch (service) {
      case 0x01 -> currentData(unit, request, isFunctional);
      case 0x02 -> frozenData(unit, request, isFunctional);
      case 0x03, 0x07, 0x0A -> List.of(codes(service, unit.troubles().codes(service, seconds)));
      case 0x09 -> information(unit, request, isFunctional);
      case 0x22 -> identified(unit, request, isFunctional);
      default -> Refusal.of(service, Refusal.SERVICE_NOT_SUPPORTED, isFunctional);
    };
  }

  private static List<byte[]> currentData(ControlUnit unit, byte[] request, boolean isFunctional) {
    byte[] data =
        request.length - 1 <= MOST_PARAMETERS ? unit.parameters().answer(request) : new byte[0];
    return data.length == 0
        ? Refusal.of(0x01, Refusal.SUB_FUNCTION_NOT_SUPPORTED, isFunctional)
        : List.of(join(new byte[] {0x41}, data));
  }

  /** Pairs of parameter and frame; only frame 00 exists. */
  private static List<byte[]> frozenData(ControlUnit unit, byte[] request, boolean isFunctional) {
    ByteArrayOutputStream data = new ByteArrayOutputStream();
    for (int i = 1; i + 1 < request.length && i / 2 < MOST_FROZEN; i += 2) {
      byte[] bytes = unit.troubles().frozen(request[i] & 0xFF);
      if (bytes.length > 0 && request[i + 1] == 0) {
        data.write(request[i]);
        data.write(0);
        data.writeBytes(bytes);
      }
    }
    return data.size() == 0
        ? Refusal.of(0x02, Refusal.SUB_FUNCTION_NOT_SUPPORTED, isFunctional)
        : List.of(join(new byte[] {0x42}, data.toByteArray()));
  }

  private static byte[] codes(int service, List<byte[]> codes) {
    byte[] head = {(byte) (service + 0x40), (byte) codes.size()};
    return join(head, join(codes.toArray(new byte[0][])));
  }

  private static List<byte[]> information(ControlUnit unit, byte[] request, boolean isFunctional) {
    int type = request.length == 2 ? request[1] & 0xFF : -1;
    Information information = unit.information();
    byte[] data = information.data(type);
    if (data.length == 0) {
      return Refusal.of(0x09, Refusal.SUB_FUNCTION_NOT_SUPPORTED, isFunctional);
    }
    byte[] head = {0x49, (byte) type};
    byte[] count = type == 0 ? new byte[0] : new byte[] {(byte) information.count(type)};
    return List.of(join(head, count, data));
  }

  private static List<byte[]> identified(ControlUnit unit, byte[] request, boolean isFunctional) {
    return Identifiers.answer(
        unit,
        request,
        isFunctional,
        identifier -> unit.identifiers().getOrDefault(identifier, () -> new byte[0]).get());
  }
}
