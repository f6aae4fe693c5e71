package steadypull.store.column;

import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/** Reads the blocks of {@link Deflation}. */
final class Inflation implements AutoCloseable {
  /** No deflated octet stands for more (zlib, "Maximum Compression Factor": 1032 to 1). */
  private static final int MOST_GROWTH = 1032;

  /** No block is longer: every number of the fullest segment with its escape. */
  private static final int MOST_OCTETS = SegmentFormat.MOST_SAMPLES * Symbols.MOST_OCTETS;

  private final Inflater inflater = new Inflater(true);

  ByteReader read(ByteReader in) throws DamagedSegmentException {
    int length = in.count(MOST_OCTETS, "bytes in a block");
    int deflated = in.count(in.remaining(), "bytes in a deflated block");
    int from = in.skip(deflated);
    if (deflated == length) {
      return new ByteReader(in.array(), from, from + length);
    }
    if (length > (long) deflated * MOST_GROWTH) {
      throw new DamagedSegmentException("a length that deflating can reach", length + " bytes");
    }
    byte[] octets = new byte[length];
    inflate(in.array(), from, deflated, octets);
    return new ByteReader(octets, 0, length);
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
