package steadypull.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Finds the first byte of a file that is not UTF-8. Parsers decode ahead and then no longer know
 * where they were. One thread.
 */
final class WrongByte {
  private static final int PIECE = 8192;

  private int line = 1;
  private int column = 1;

  private WrongByte() {}

  /** Where the byte stands; empty if there is none, or the file cannot be read again. */
  static Optional<CellPlace> in(Path file) {
    try (InputStream bytes = GpxFile.open(file)) {
      WrongByte walk = new WrongByte();
      return walk.finds(bytes)
          ? Optional.of(new CellPlace(file, walk.line, walk.column, ""))
          : Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private boolean finds(InputStream content) throws IOException {
    // A new decoder reports what it cannot decode.
    CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    ByteBuffer bytes = ByteBuffer.allocate(PIECE);
    CharBuffer characters = CharBuffer.allocate(PIECE);
    int taken;
    do {
      taken = content.read(bytes.array(), bytes.position(), bytes.remaining());
      bytes.limit(bytes.position() + Math.max(0, taken)).rewind();
      CoderResult result = decoder.decode(bytes, characters, taken < 0);
      characters.flip().chars().forEach(this::pass);
      if (result.isError()) {
        return true;
      }
      characters.clear();
      bytes.compact();
    } while (taken >= 0);
    return false;
  }

  private void pass(int character) {
    if (character == '\n') {
      line++;
      column = 1;
    } else {
      column++;
    }
  }
}
