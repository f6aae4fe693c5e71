package steadypull.store.column;

import java.util.zip.Deflater;

/** Writes blocks, deflated where that is shorter; {@link SeriesWriter} has the layout. */
final class Deflation implements AutoCloseable {
  private static final int LEVEL = 6;

  private final Deflater deflater = new Deflater(LEVEL, true);
  private byte[] room = new byte[4096];

  Deflation() {
    // For data that are noise with a pattern: short matches, which cost more than they save, are
    // left out (zlib manual, deflateInit2, Z_FILTERED).
    deflater.setStrategy(Deflater.FILTERED);
    // The first call takes up the strategy and may end early; let it be one without data.
    deflater.deflate(room, 0, 0);
  }

  void write(ByteWriter out, byte[] octets, int length) {
    int deflated = deflate(octets, length);
    out.unsigned(length);
    out.unsigned(deflated == 0 ? length : deflated);
    if (deflated == 0) {
      out.octets(octets, length);
    } else {
      out.octets(room, deflated);
    }
  }

  /** How long it has become in {@link #room}, or 0 if not shorter. */
  private int deflate(byte[] octets, int length) {
    if (room.length < length) {
      room = new byte[length + length / 2];
    }
    deflater.reset();
    deflater.setInput(octets, 0, length);
    deflater.finish();
    // One octet less than the source: what does not fit there is not worth it.
    int written = length < 2 ? 0 : deflater.deflate(room, 0, length - 1);
    return deflater.finished() ? written : 0;
  }

  @Override
  public void close() {
    deflater.end();
  }
}
