package steadypull.demo.bench;

import java.util.Arrays;
import java.util.Random;

/** Fills frames up to 8 bytes with AA, or, where that goes wrong, with any value. */
final class Filler {
  private static final byte USUAL = (byte) 0xAA;
  private static final int FRAME_BYTES = 8;

  private final Random values;
  private boolean isUsual = true;

  Filler(long seed) {
    values = new Random(seed);
  }

  void setUsual(boolean isUsual) {
    this.isUsual = isUsual;
  }

  /** A first byte, a part of up to seven bytes, and what is needed behind. */
  byte[] filled(int first, byte[] part) {
    byte[] data = new byte[FRAME_BYTES];
    Arrays.fill(data, isUsual ? USUAL : (byte) values.nextInt());
    data[0] = (byte) first;
    System.arraycopy(part, 0, data, 1, part.length);
    return data;
  }
}
