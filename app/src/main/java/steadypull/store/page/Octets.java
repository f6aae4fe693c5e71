package steadypull.store.page;

/** Reads numbers, big-endian, and never beyond the end. Not thread-safe. */
final class Octets {
  private static final int LONGEST_VARINT = 9;

  private final byte[] bytes;
  private final int end;
  private int at;

  Octets(byte[] bytes, int from, int end) throws DamagedPageException {
    if (from < 0 || end > bytes.length || from > end) {
      throw new DamagedPageException("a place outside the page");
    }
    this.bytes = bytes;
    this.at = from;
    this.end = end;
  }

  int at() {
    return at;
  }

  int remaining() {
    return end - at;
  }

  /** A number with sign, of 0 to 8 octets. */
  long signed(int octets) throws DamagedPageException {
    if (octets == 0) {
      return 0;
    }
    long number = next();
    for (int octet = 1; octet < octets; octet++) {
      number = number << 8 | (next() & 0xFF);
    }
    return number;
  }

  int unsigned(int octets) throws DamagedPageException {
    return (int) (signed(octets) & ((1L << (8 * octets)) - 1));
  }

  /** Section 1.6: seven bits an octet, the highest first; a ninth octet gives eight. */
  long varint() throws DamagedPageException {
    long number = 0;
    for (int octet = 1; octet < LONGEST_VARINT; octet++) {
      byte next = next();
      number = number << 7 | (next & 0x7F);
      if (next >= 0) {
        return number;
      }
    }
    return number << 8 | (next() & 0xFF);
  }

  byte[] take(int octets) throws DamagedPageException {
    require(octets);
    byte[] taken = java.util.Arrays.copyOfRange(bytes, at, at + octets);
    at += octets;
    return taken;
  }

  private byte next() throws DamagedPageException {
    require(1);
    return bytes[at++];
  }

  private void require(int octets) throws DamagedPageException {
    if (octets < 0 || octets > remaining()) {
      throw new DamagedPageException("a value that ends with the page");
    }
  }
}
