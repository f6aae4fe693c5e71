package steadypull.adapter.frame;

import java.util.Arrays;
import java.util.HexFormat;

/** The bytes of one message, without header, length and filler. Immutable. */
public final class Payload implements Octets {
  private static final HexFormat HEX = HexFormat.of().withUpperCase();

  private final byte[] bytes;

  private Payload(byte[] bytes) {
    this.bytes = bytes;
  }

  /** Copies bytes. */
  public static Payload of(byte[] bytes) {
    return new Payload(bytes.clone());
  }

  /**
   * Reads hex digits, blanks allowed.
   *
   * @throws IllegalArgumentException if the text is not whole bytes in hex
   */
  public static Payload ofHex(String text) {
    return new Payload(HEX.parseHex(text.replace(" ", "")));
  }

  @Override
  public int size() {
    return bytes.length;
  }

  @Override
  public int at(int index) {
    return bytes[index] & 0xFF;
  }

  /** Whether the bytes begin so; values 0 to 255. */
  public boolean startsWith(int... expected) {
    if (bytes.length < expected.length) {
      return false;
    }
    for (int i = 0; i < expected.length; i++) {
      if (at(i) != expected[i]) {
        return false;
      }
    }
    return true;
  }

  /** The bytes from an index on; empty if the index is the size. */
  public Payload from(int index) {
    return slice(index, bytes.length);
  }

  /** The bytes from one index up to, not with, another. */
  public Payload slice(int from, int to) {
    return new Payload(Arrays.copyOfRange(bytes, from, to));
  }

  /** A copy of the bytes. */
  public byte[] toBytes() {
    return bytes.clone();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Payload payload && Arrays.equals(bytes, payload.bytes);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(bytes);
  }

  /** Upper-case hex without blanks. */
  @Override
  public String toString() {
    return HEX.formatHex(bytes);
  }
}
