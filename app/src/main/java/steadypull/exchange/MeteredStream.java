package steadypull.exchange;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * Bytes on their way to a parser, which may not take in too much at once: a name, a comment or a
 * text without an end would otherwise fill the memory. One thread.
 */
final class MeteredStream extends FilterInputStream {
  /** No piece of a file that somebody means to be read is longer. */
  static final int MOST_BYTES = 1 << 20;

  private long sinceLastPiece;

  MeteredStream(InputStream bytes) {
    super(bytes);
  }

  /** A piece of the file has been understood; the next begins. */
  void beginPiece() {
    sinceLastPiece = 0;
  }

  @Override
  public int read() throws IOException {
    int next = super.read();
    count(1);
    return next;
  }

  @Override
  public int read(byte[] into, int offset, int length) throws IOException {
    int taken = super.read(into, offset, length);
    count(Math.max(0, taken));
    return taken;
  }

  private void count(int taken) throws PieceTooLong {
    sinceLastPiece += taken;
    if (sinceLastPiece > MOST_BYTES) {
      throw new PieceTooLong();
    }
  }

  /** More than {@link #MOST_BYTES} came without anything that could be understood. */
  static final class PieceTooLong extends IOException {
    private static final long serialVersionUID = 1L;
  }
}
