package steadypull.demo.bench;

import java.util.Arrays;

/**
 * A message on a bus before CAN: three header bytes, up to seven data bytes, one check byte. Not
 * changed after it was made.
 */
final class OlderFrame implements Frame {
  static final int HEADER_BYTES = 3;

  private final long nanos;
  private final byte[] bytes;

  /** Takes header and data and adds the check byte. */
  OlderFrame(long nanos, BusProtocol protocol, byte[] headerAndData) {
    this.nanos = nanos;
    bytes = Arrays.copyOf(headerAndData, headerAndData.length + 1);
    bytes[headerAndData.length] =
        (byte) (protocol.isKLine() ? sum(headerAndData) : redundancy(headerAndData));
  }

  private OlderFrame(long nanos, byte[] bytes) {
    this.nanos = nanos;
    this.bytes = bytes;
  }

  @Override
  public long nanos() {
    return nanos;
  }

  byte[] bytes() {
    return bytes.clone();
  }

  /** The data alone. */
  byte[] data() {
    return Arrays.copyOfRange(bytes, HEADER_BYTES, bytes.length - 1);
  }

  /** The same with one bit of one byte turned, so that the check byte is wrong. */
  OlderFrame damaged(int at, int bit) {
    return new OlderFrame(nanos, Damage.turned(bytes, at, bit));
  }

  /** Sum modulo 256, ISO 9141-2 and ISO 14230-2. */
  private static int sum(byte[] bytes) {
    int sum = 0;
    for (byte one : bytes) {
      sum += one;
    }
    return sum;
  }

  /** SAE J1850: polynomial 1D, first value FF, result inverted. */
  private static int redundancy(byte[] bytes) {
    int register = 0xFF;
    for (byte one : bytes) {
      register ^= one & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        register = register >= 0x80 ? ((register << 1) ^ 0x1D) & 0xFF : register << 1;
      }
    }
    return ~register;
  }
}
