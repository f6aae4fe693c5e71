package steadypull.road.memory;

/** Reads what {@link TileWriter} wrote and never beyond its end. */
final class TileReader {
  private static final int MOST_BITS = 35;

  private final TileKey key;
  private final byte[] octets;
  private final int end;
  private int position;

  /** Reads the octets of a tile up to an end. */
  TileReader(TileKey key, byte[] octets, int end) {
    this.key = key;
    this.octets = octets;
    this.end = end;
  }

  int octet() throws DamagedTileException {
    if (position >= end) {
      throw new DamagedTileException(key, "an octet more", "the end");
    }
    return octets[position++] & 0xFF;
  }

  /** A number within bounds. */
  int unsigned(long least, long most, String what) throws DamagedTileException {
    return within(number(), least, most, what);
  }

  /** A number of either sign within bounds. */
  int signed(long least, long most, String what) throws DamagedTileException {
    long number = number();
    return within((number >>> 1) ^ -(number & 1), least, most, what);
  }

  /** A number of either sign, to be added to what went before; the sum is within bounds. */
  int from(int before, long least, long most, String what) throws DamagedTileException {
    long number = number();
    return within(before + ((number >>> 1) ^ -(number & 1)), least, most, what);
  }

  void requireEnd() throws DamagedTileException {
    if (position != end) {
      throw new DamagedTileException(key, "the end", (end - position) + " octets more");
    }
  }

  int remaining() {
    return end - position;
  }

  private long number() throws DamagedTileException {
    long value = 0;
    for (int shift = 0; shift < MOST_BITS; shift += 7) {
      int octet = octet();
      value |= (octet & 0x7FL) << shift;
      if (octet < 0x80) {
        return value;
      }
    }
    throw new DamagedTileException(key, "a number of at most five octets", "one without an end");
  }

  private int within(long value, long least, long most, String what) throws DamagedTileException {
    if (value < least || value > most) {
      throw new DamagedTileException(
          key, "%s of %d to %d".formatted(what, least, most), Long.toString(value));
    }
    return (int) value;
  }
}
