package steadypull.demo.bench;

import java.util.Arrays;

/**
 * A CAN frame with the moment at which it is on the bus. Its first byte tells what it is (ISO
 * 15765-2). Not changed after it was made.
 */
final class CanFrame implements Frame {
  private static final int MOST_BYTES = 8;

  private final long nanos;
  private final int identifier;
  private final byte[] data;

  /** Takes 0 to 8 bytes. */
  CanFrame(long nanos, int identifier, byte[] data) {
    if (data.length > MOST_BYTES) {
      throw new IllegalArgumentException("A CAN frame carries up to 8 bytes, found " + data.length);
    }
    this.nanos = nanos;
    this.identifier = identifier;
    this.data = data.clone();
  }

  @Override
  public long nanos() {
    return nanos;
  }

  int identifier() {
    return identifier;
  }

  byte[] data() {
    return data.clone();
  }

  /** The high half of the first byte: 0 single, 1 first, 2 consecutive, 3 flow control. */
  int kind() {
    return data.length == 0 ? -1 : (data[0] & 0xF0) >> 4;
  }

  boolean isFirstOfSeveral() {
    return kind() == 1;
  }

  boolean isConsecutive() {
    return kind() == 2;
  }

  /** The payload of a single frame; empty if it is none. */
  byte[] single() {
    int length = kind() == 0 ? data[0] : 0;
    return length < data.length ? Arrays.copyOfRange(data, 1, 1 + length) : new byte[0];
  }

  /** The same with one bit of one byte turned. */
  CanFrame damaged(int at, int bit) {
    return new CanFrame(nanos, identifier, Damage.turned(data, at, bit));
  }
}
