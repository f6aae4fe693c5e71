package steadypull.demo.bench;

import java.util.List;

/**
 * SAE J1979-2: everything behind ISO 14229 service 22. F400 to F4FF mirror the parameters with
 * their support maps, F802 and the like the vehicle information (without a count of items), F810
 * says that it is so; all from memory of the standard, not verified.
 */
final class IdentifierDialect implements Dialect {
  private static final int PARAMETERS = 0xF400;
  private static final int INFORMATION = 0xF800;
  private static final int PROTOCOL = 0xF810;
  private static final byte[] OBD_ON_UDS = {1};

  @Override
  public List<byte[]> answer(
      ControlUnit unit, byte[] request, boolean isFunctional, double seconds) {
    int service = request[0] & 0xFF;
    return service == 0x22
        ? Identifiers.answer(unit, request, isFunctional, identifier -> data(unit, identifier))
        : Refusal.of(service, Refusal.SERVICE_NOT_SUPPORTED, isFunctional);
  }

  private static byte[] data(ControlUnit unit, int identifier) {
    if (identifier == PROTOCOL) {
      return OBD_ON_UDS.clone();
    }
    return switch (identifier & 0xFF00) {
      case PARAMETERS -> unit.parameters().data(identifier & 0xFF);
      case INFORMATION -> unit.information().data(identifier & 0xFF);
      default -> unit.identifiers().getOrDefault(identifier, () -> new byte[0]).get();
    };
  }
}
