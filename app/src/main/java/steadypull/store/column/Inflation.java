package steadypull.store.column;

import java.util.Arrays;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/** Reads the blocks of {@link Deflation}. */
final class Inflation implements AutoCloseable {
  /** No deflated octet stands for more (zlib, "Maximum Compression Factor": 1032 to 1). */
  private static final int MOST_GROWTH = 1032;

  private final Inflater inflater = new Inflater(true);

  byte[] read(ByteReader in, int most) throws DamagedSegmentException {
    int length = in.count(most, "bytes in a block");
    int deflated = in.count(in.remaining(), "bytes in a deflated block");
    if (deflated == 0) {
      int from = in.skip(length);
      return Arrays.copyOfRange(in.array(), from, from + length);
    }
    if (length > (long) deflated * MOST_GROWTH) {
      throw new DamagedSegmentException("a length that deflating can reach", length + " bytes");
    }
    byte[] octets = new byte[length];
    inflate(in.array(), in.skip(deflated), deflated, octets);
    return octets;
  }

  private void inflate(byte[] source, int from, int length, byte[] target)
      throws DamagedSegmentException {
    inflater.reset();
    inflater.setInput(source, from, length);
    try {
      int written = inflater.inflate(target);
      // The end mark may still be ahead when the last octet has been written.
      int beyond = inflater.finished() ? 0 : inflater.inflate(new byte[1]);
      if (written != target.length || beyond > 0 || !isAtItsEnd()) {
        throw new DamagedSegmentException(target.length + " bytes inflated", "another number");
      }
    } catch (DataFormatException e) {
      throw new DamagedSegmentException("deflated bytes", String.valueOf(e.getMessage()));
    }
  }

  private boolean isAtItsEnd() {
    return inflater.finished() && inflater.getRemaining() == 0;
  }

  @Override
  public void close() {
    inflater.end();
  }
}
