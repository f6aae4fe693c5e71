package steadypull.demo.bench;

import java.util.List;

/** Negative answers. Codes by ISO 14229-1. */
final class Refusal {
  static final int SERVICE_NOT_SUPPORTED = 0x11;
  static final int SUB_FUNCTION_NOT_SUPPORTED = 0x12;
  static final int INCORRECT_LENGTH = 0x13;
  static final int REQUEST_OUT_OF_RANGE = 0x31;
  static final int RESPONSE_PENDING = 0x78;

  private Refusal() {}

  /** A negative answer, or silence where everybody was asked. */
  static List<byte[]> of(int service, int code, boolean isFunctional) {
    return isFunctional ? List.of() : List.of(message(service, code));
  }

  static byte[] message(int service, int code) {
    return new byte[] {0x7F, (byte) service, (byte) code};
  }
}
