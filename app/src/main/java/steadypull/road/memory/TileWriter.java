package steadypull.road.memory;

import java.io.ByteArrayOutputStream;

/** Whole numbers, seven bits an octet, lowest first. */
final class TileWriter {
  private final ByteArrayOutputStream octets = new ByteArrayOutputStream();

  void octet(int value) {
    octets.write(value);
  }

  /** 0 or more. */
  void unsigned(long value) {
    long left = value;
    while (left >= 0x80) {
      octets.write((int) (left & 0x7F) | 0x80);
      left >>>= 7;
    }
    octets.write((int) left);
  }

  /** Any sign: 0, -1, 1, -2 and so on become 0, 1, 2, 3. */
  void signed(long value) {
    unsigned((value << 1) ^ (value >> 63));
  }

  byte[] octets() {
    return octets.toByteArray();
  }
}
