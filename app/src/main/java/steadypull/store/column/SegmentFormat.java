package steadypull.store.column;

import java.util.zip.CRC32C;

/**
 * The frame around segments and overviews.
 *
 * <pre>
 * segment
 * magic     3 octets   the letters SPS
 * version   1 octet    1
 * length    unsigned   how many octets the head has
 * head                 see {@link SegmentHead}
 * check     4 octets   of all before
 * parts                each stretch, see {@link Timeline}, then each channel's values of all stretches,
 *                      see {@link ValueSeries}; the head says how many there are and how long. A part:
 *   pool    block      see {@link SeriesWriter}
 *   body               what refers to the pool
 *   check   4 octets   of the part
 *
 * overview
 * magic     3 octets   the letters SPO
 * version   1 octet    1
 * body                 see {@link Overview}
 * check     4 octets   of all before
 * </pre>
 *
 * A check is a CRC-32C (RFC 3385), little-endian. Numbers: {@link ByteWriter}. Series of integers:
 * {@link SeriesWriter}.
 */
final class SegmentFormat {
  /** The most samples of a segment; keeps what hostile bytes can ask for within bounds. */
  static final int MOST_SAMPLES = 1 << 17;

  static final int MOST_CHANNELS = 1 << 16;

  static final String SEGMENT = "SPS";
  static final String OVERVIEW = "SPO";
  static final int CHECK_OCTETS = 4;

  private static final int VERSION = 1;

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
    writeCheck(out, 0);
    return out.toByteArray();
  }

  /** Appends the check of all octets from that one on. */
  static void writeCheck(ByteWriter out, int from) {
    out.littleEndian(check(out.array(), from, out.size()), CHECK_OCTETS);
  }

  /** The body, if magic, version and the check behind it are as they must be. */
  static ByteReader open(String magic, byte[] bytes) throws DamagedSegmentException {
    int body = beginning(magic, bytes);
    int end = bytes.length - CHECK_OCTETS;
    if (end < body) {
      throw new DamagedSegmentException("a body and its check", bytes.length + " bytes");
    }
    requireCheck(bytes, 0, end);
    return new ByteReader(bytes, body, end);
  }

  /** Where that begins what comes behind magic and version. */
  static int beginning(String magic, byte[] bytes) throws DamagedSegmentException {
    ByteReader head = new ByteReader(bytes, 0, bytes.length);
    for (int i = 0; i < magic.length(); i++) {
      if (head.octet() != magic.charAt(i)) {
        throw new DamagedSegmentException("the letters " + magic, "other bytes");
      }
    }
    requireVersion(head.octet());
    return magic.length() + 1;
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

  /** Holds octets to the check that stands behind them. */
  static void requireCheck(byte[] bytes, int from, int end) throws DamagedSegmentException {
    long told = new ByteReader(bytes, end, bytes.length).littleEndian(CHECK_OCTETS);
    long computed = check(bytes, from, end);
    if (told != computed) {
      throw new DamagedSegmentException(
          "the check 0x%08X".formatted(told), "bytes that give 0x%08X".formatted(computed));
    }
  }

  private static long check(byte[] bytes, int from, int end) {
    CRC32C check = new CRC32C();
    check.update(bytes, from, end - from);
    return check.getValue();
  }
}
