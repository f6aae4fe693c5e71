package steadypull.demo.bench;

import java.util.Optional;

/** Answers that every control unit gives alike. Codes by ISO 14229-1. */
final class Services {
  static final int SERVICE_NOT_SUPPORTED = 0x11;
  static final int SUB_FUNCTION_NOT_SUPPORTED = 0x12;
  static final int INCORRECT_LENGTH = 0x13;
  static final int REQUEST_OUT_OF_RANGE = 0x31;
  static final int RESPONSE_PENDING = 0x78;

  private Services() {}

  static Optional<byte[]> currentData(Parameters parameters, byte[] request, boolean isFunctional) {
    byte[] data = parameters.answer(request);
    if (data.length == 0) {
      return refusal(0x01, SUB_FUNCTION_NOT_SUPPORTED, isFunctional);
    }
    return Optional.of(Parameters.join(new byte[] {0x41}, data));
  }

  /** On CAN a count follows the service: none stored. */
  static Optional<byte[]> noTroubleCodes(int service) {
    return Optional.of(new byte[] {(byte) (service + 0x40), 0});
  }

  /** A negative answer, or silence where everybody was asked. */
  static Optional<byte[]> refusal(int service, int code, boolean isFunctional) {
    return isFunctional
        ? Optional.empty()
        : Optional.of(new byte[] {0x7F, (byte) service, (byte) code});
  }
}
