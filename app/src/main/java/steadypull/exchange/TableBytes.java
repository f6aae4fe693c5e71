package steadypull.exchange;

import java.io.BufferedInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.InterruptedIOException;
import java.io.PushbackInputStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

/**
 * The bytes of one table, unpacked if they are gzip, and how many of the file's have been read. A
 * packed table is never unpacked further than it is read. One thread.
 */
final class TableBytes implements AutoCloseable {
  /** RFC 1952, section 2.3.1: ID1 and ID2. */
  private static final byte[] GZIP = {0x1F, (byte) 0x8B};

  /** Local file header of a ZIP archive (its application note, 4.3.7; from memory). */
  private static final byte[] ARCHIVE = {'P', 'K', 3, 4};

  /** U+FEFF in UTF-8 (RFC 3629, section 6). */
  private static final byte[] UTF_8_MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

  /** U+FEFF in the two byte orders of UTF-16 (RFC 2781, section 3.2). */
  private static final byte[] BIG_ENDIAN_MARK = {(byte) 0xFE, (byte) 0xFF};

  private static final byte[] LITTLE_ENDIAN_MARK = {(byte) 0xFF, (byte) 0xFE};

  private static final int LONGEST_MARK = 3;
  private static final int BUFFER = 1 << 16;

  private final Path file;
  private final Counted counted;
  private final PushbackInputStream unpacked;

  private TableBytes(Path file, Counted counted) throws IOException {
    this.file = file;
    this.counted = counted;
    PushbackInputStream raw =
        new PushbackInputStream(new BufferedInputStream(counted, BUFFER), LONGEST_MARK);
    this.unpacked =
        beginsWith(raw, GZIP)
            ? new PushbackInputStream(
                new BufferedInputStream(new Packed(raw), BUFFER), LONGEST_MARK)
            : raw;
  }

  /** Opens a file; folders, devices and pipes are refused, since a table is read more than once. */
  static TableBytes open(Path file) throws IOException, TableException {
    if (Files.isDirectory(file)) {
      throw FileFault.unreadable(file, "a folder");
    }
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      throw FileFault.unreadable(file, "a device or a pipe");
    }
    if (isArchive(file)) {
      throw FileFault.unreadable(
          file, "an archive (ZIP), perhaps a spreadsheet's own file: save it as CSV");
    }
    Counted counted = new Counted(Files.newInputStream(file));
    try {
      return new TableBytes(file, counted);
    } catch (IOException e) {
      counted.close();
      throw e;
    }
  }

  private static boolean isArchive(Path file) throws IOException {
    try (InputStream bytes = Files.newInputStream(file)) {
      return Arrays.equals(bytes.readNBytes(ARCHIVE.length), ARCHIVE);
    }
  }

  /** The text behind a byte-order mark, if there is one; bytes that fit nothing become U+FFFD. */
  Reader text(TextEncoding encoding) throws IOException, TableException {
    if (isWide() && encoding != TextEncoding.UTF_16) {
      throw CellPlace.ofLine(file, 1)
          .refusal(
              "UTF-8",
              "UTF-16",
              " Save it as UTF-8, or say encoding = \"utf-16\" in a mapping (--map).");
    }
    if (beginsWith(unpacked, UTF_8_MARK)) {
      unpacked.skipNBytes(UTF_8_MARK.length);
    }
    return new InputStreamReader(unpacked, encoding.charset());
  }

  /** Whether it begins with the mark of UTF-16; before any text is read. */
  boolean isWide() throws IOException {
    return beginsWith(unpacked, BIG_ENDIAN_MARK) || beginsWith(unpacked, LITTLE_ENDIAN_MARK);
  }

  /**
   * The first 128 bits of SHA-256 (FIPS 180-4) over all bytes as they are unpacked, in hexadecimal
   * digits; two tables that share them by chance are not to be expected.
   *
   * @throws InterruptedIOException if the watch ends it
   */
  String digest(TransferWatch watch) throws IOException {
    MessageDigest digest = sha256();
    byte[] part = new byte[BUFFER];
    for (int read = unpacked.read(part); read >= 0; read = unpacked.read(part)) {
      digest.update(part, 0, read);
      if (!watch.goesOn(bytesRead())) {
        throw new InterruptedIOException("Stopped as asked");
      }
    }
    return HexFormat.of().formatHex(digest.digest(), 0, 16);
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java has SHA-256", e);
    }
  }

  /** Bytes of the file that were read so far, a buffer ahead of the text. */
  long bytesRead() {
    return counted.count;
  }

  @Override
  public void close() throws IOException {
    unpacked.close();
  }

  private static boolean beginsWith(PushbackInputStream bytes, byte[] mark) throws IOException {
    byte[] start = bytes.readNBytes(mark.length);
    bytes.unread(start);
    return Arrays.equals(start, mark);
  }

  /** Packed members (RFC 1952, section 2.2) to their end; what lies behind is a fault. */
  private static final class Packed extends GZIPInputStream {
    /** CRC32 and ISIZE, which the inflater leaves over (RFC 1952, section 2.3.1). */
    private static final int TRAILER = 8;

    Packed(InputStream in) throws IOException {
      super(in, BUFFER);
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
      int read = super.read(into, offset, length);
      if (read < 0 && (inf.getRemaining() > TRAILER || in.read() >= 0)) {
        throw new ZipException("bytes behind its end");
      }
      return read;
    }
  }

  private static final class Counted extends FilterInputStream {
    private long count;

    Counted(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      int next = super.read();
      count += next < 0 ? 0 : 1;
      return next;
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
      int read = super.read(into, offset, length);
      count += Math.max(0, read);
      return read;
    }
  }
}
