package steadypull.store.column;

import java.util.Arrays;

/** Bytes that grow at their end. Integers are little-endian or in groups of seven bits (LEB128). */
final class ByteWriter {
  private static final int FIRST_CAPACITY = 4096;

  private byte[] bytes = new byte[FIRST_CAPACITY];
  private int size;

  int size() {
    return size;
  }

  byte[] toByteArray() {
    return Arrays.copyOf(bytes, size);
  }

  void octet(int value) {
    reserve(1);
    bytes[size++] = (byte) value;
  }

  void octets(byte[] source, int length) {
    reserve(length);
    System.arraycopy(source, 0, bytes, size, length);
    size += length;
  }

  void append(ByteWriter other) {
    octets(other.bytes, other.size);
  }

  /** Seven bits an octet, least significant first, the top bit set on all but the last: 1 to 10. */
  void unsigned(long value) {
    reserve(10);
    long rest = value;
    while ((rest & ~0x7FL) != 0) {
      bytes[size++] = (byte) (rest | 0x80);
      rest >>>= 7;
    }
    bytes[size++] = (byte) rest;
  }

  /** As {@link #unsigned}, small numbers of either sign short. */
  void signed(long value) {
    unsigned(ZigZag.of(value));
  }

  void littleEndian(long value, int octets) {
    for (int octet = 0; octet < octets; octet++) {
      octet((int) (value >>> (8 * octet)));
    }
  }

  void clear() {
    size = 0;
  }

  byte[] array() {
    return bytes;
  }

  private void reserve(int more) {
    if (size + more > bytes.length) {
      bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, size + more));
    }
  }
}
