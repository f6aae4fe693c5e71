package steadypull.store.column;

import java.util.zip.CRC32C;

/**
 * The frame around segments and overviews.
 *
 * <pre>
 * magic     3 octets   the letters SPS for a segment, SPO for an overview
 * version   1 octet    1
 * body
 * check     4 octets   CRC-32C (RFC 3385) of all before, little-endian
 *
 * body of a segment
 * channels  unsigned   how many, then each: unsigned, how far after the one before, the first after -1
 * pool      block      see {@link SeriesWriter}
 * timeline             see {@link Timeline}
 * columns              each channel's values in the order of the channels, see {@link ValueSeries};
 *                      the timeline says how many
 * </pre>
 *
 * Numbers: {@link ByteWriter}. Series of integers: {@link SeriesWriter}.
 */
final class SegmentFormat {
  /** The most samples of a segment; keeps what hostile bytes can ask for within bounds. */
  static final int MOST_SAMPLES = 1 << 17;

  static final int MOST_CHANNELS = 1 << 16;

  static final String SEGMENT = "SPS";
  static final String OVERVIEW = "SPO";

  private static final int VERSION = 1;
  private static final int CHECK_OCTETS = 4;

  private SegmentFormat() {}

  static ByteWriter begin(String magic) {
    ByteWriter out = new ByteWriter();
    for (int i = 0; i < magic.length(); i++) {
      out.octet(magic.charAt(i));
    }
    out.octet(VERSION);
    return out;
  }

  static byte[] finish(ByteWriter out) {
    out.littleEndian(check(out.array(), out.size()), CHECK_OCTETS);
    return out.toByteArray();
  }

  /** The body, if magic, version and check are as they must be. */
  static ByteReader open(String magic, byte[] bytes) throws DamagedSegmentException {
    ByteReader head = new ByteReader(bytes, 0, bytes.length);
    for (int i = 0; i < magic.length(); i++) {
      if (head.octet() != magic.charAt(i)) {
        throw new DamagedSegmentException("the letters " + magic, "other bytes");
      }
    }
    requireVersion(head.octet());
    int body = magic.length() + 1;
    int end = bytes.length - CHECK_OCTETS;
    if (end < body) {
      throw new DamagedSegmentException("a body and its check", bytes.length + " bytes");
    }
    requireCheck(bytes, end);
    return new ByteReader(bytes, body, end);
  }

  private static void requireVersion(int found) throws DamagedSegmentException {
    if (found > VERSION) {
      throw new DamagedSegmentException(
          "form " + VERSION,
          "form "
              + found
              + ": a newer version of the program wrote it, update the program, or the bytes are"
              + " damaged");
    }
    if (found < VERSION) {
      throw new DamagedSegmentException("form " + VERSION, "form " + found);
    }
  }

  private static void requireCheck(byte[] bytes, int end) throws DamagedSegmentException {
    long told = new ByteReader(bytes, end, bytes.length).littleEndian(CHECK_OCTETS);
    long computed = check(bytes, end);
    if (told != computed) {
      throw new DamagedSegmentException(
          "the check 0x%08X".formatted(told), "bytes that give 0x%08X".formatted(computed));
    }
  }

  private static long check(byte[] bytes, int end) {
    CRC32C check = new CRC32C();
    check.update(bytes, 0, end);
    return check.getValue();
  }
}
