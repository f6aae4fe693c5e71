package steadypull.demo.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One CAN frame of an answer, with the moment at which it is on the bus. Always 8 bytes, filled up
 * with AA; its identifier has 11 bits. Not changed after it was made.
 */
final class Frame {
  private static final byte FILLER = (byte) 0xAA;
  private static final long FLOW_CONTROL_NANOS = 1_200_000;
  private static final long SEPARATION_NANOS = 400_000;

  private final long nanos;
  private final int identifier;
  private final byte[] data;

  private Frame(long nanos, int identifier, byte[] data) {
    this.nanos = nanos;
    this.identifier = identifier;
    this.data = data;
  }

  /** On the bench's clock. */
  long nanos() {
    return nanos;
  }

  int identifier() {
    return identifier;
  }

  byte[] data() {
    return data.clone();
  }

  boolean isFirstOfSeveral() {
    return (data[0] & 0xF0) == 0x10;
  }

  boolean isConsecutive() {
    return (data[0] & 0xF0) == 0x20;
  }

  /** Cuts a payload of 1 to 4095 bytes into the frames of ISO 15765-2. */
  static List<Frame> segment(byte[] payload, int identifier, long nanos) {
    List<Frame> frames = new ArrayList<>();
    if (payload.length <= 7) {
      frames.add(new Frame(nanos, identifier, filled(payload, 0, payload.length)));
      return frames;
    }
    byte[] first = filled(payload, 0x10 | (payload.length >> 8), 6);
    System.arraycopy(payload, 0, first, 2, 6);
    first[1] = (byte) payload.length;
    frames.add(new Frame(nanos, identifier, first));
    long at = nanos + FLOW_CONTROL_NANOS;
    int count = 1;
    for (int from = 6; from < payload.length; from += 7) {
      byte[] part = Arrays.copyOfRange(payload, from, Math.min(from + 7, payload.length));
      frames.add(new Frame(at, identifier, filled(part, 0x20 | (count & 0x0F), part.length)));
      at += SEPARATION_NANOS;
      count++;
    }
    return frames;
  }

  private static byte[] filled(byte[] payload, int control, int length) {
    byte[] data = new byte[8];
    Arrays.fill(data, FILLER);
    data[0] = (byte) (control == 0 ? length : control);
    System.arraycopy(payload, 0, data, 1, Math.min(length, 7));
    return data;
  }
}
