package steadypull.adapter.frame;

import java.util.Objects;

/**
 * A part of bytes that stand elsewhere, shown without copying. What it shows ends when its maker
 * moves it or reuses the bytes. Used by one thread.
 */
public final class OctetWindow implements Octets {
  private byte[] bytes = {};
  private int start;
  private int size;

  /** Shows the bytes from an index up to, not with, another. */
  void show(byte[] bytes, int from, int to) {
    Objects.checkFromToIndex(from, to, bytes.length);
    this.bytes = bytes;
    start = from;
    size = to - from;
  }

  @Override
  public int size() {
    return size;
  }

  @Override
  public int at(int index) {
    return bytes[start + Objects.checkIndex(index, size)] & 0xFF;
  }
}
