package steadypull.store.column;

/** Reads what {@link ByteWriter} wrote and never beyond its end. */
final class ByteReader {
  private final byte[] bytes;
  private final int end;
  private int position;

  ByteReader(byte[] bytes, int from, int to) {
    this.bytes = bytes;
    this.position = from;
    this.end = to;
  }

  int remaining() {
    return end - position;
  }

  int octet() throws DamagedSegmentException {
    require(1);
    return bytes[position++] & 0xFF;
  }

  /**
   * Reads octets into an array up to one of that value, the end of either, and says up to where it
   * filled the array.
   */
  int octetsUntil(int stop, long[] target, int from) {
    int most = Math.min(target.length - from, end - position);
    for (int i = 0; i < most; i++) {
      int octet = bytes[position + i] & 0xFF;
      if (octet == stop) {
        position += i;
        return from + i;
      }
      target[from + i] = octet;
    }
    position += most;
    return from + most;
  }

  /** Where the next octets stand in {@link #array}; moves past them. */
  int skip(int length) throws DamagedSegmentException {
    require(length);
    int from = position;
    position += length;
    return from;
  }

  byte[] array() {
    return bytes;
  }

  long unsigned() throws DamagedSegmentException {
    long value = 0;
    for (int shift = 0; shift < 64; shift += 7) {
      int octet = octet();
      value |= (octet & 0x7FL) << shift;
      if (octet < 0x80) {
        return value;
      }
    }
    throw new DamagedSegmentException("a number of at most ten bytes", "one without an end");
  }

  long signed() throws DamagedSegmentException {
    return ZigZag.undo(unsigned());
  }

  /** A number that says how many of something follow. */
  int count(int most, String what) throws DamagedSegmentException {
    long found = unsigned();
    if (found < 0 || found > most) {
      throw new DamagedSegmentException(
          "at most " + most + " " + what, Long.toUnsignedString(found));
    }
    return (int) found;
  }

  long littleEndian(int octets) throws DamagedSegmentException {
    long value = 0;
    for (int octet = 0; octet < octets; octet++) {
      value |= (long) octet() << (8 * octet);
    }
    return value;
  }

  void requireEnd() throws DamagedSegmentException {
    if (position != end) {
      throw new DamagedSegmentException("the end", (end - position) + " bytes more");
    }
  }

  private void require(int length) throws DamagedSegmentException {
    if (length < 0 || length > end - position) {
      throw new DamagedSegmentException(
          length + " bytes more", "only " + (end - position) + " before the end");
    }
  }
}
