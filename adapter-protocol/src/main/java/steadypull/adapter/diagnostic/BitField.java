package steadypull.adapter.diagnostic;

import java.util.OptionalLong;
import steadypull.adapter.frame.Octets;

/**
 * Where a raw number stands in the data of an answer, most significant bit first.
 *
 * @param firstBit offset of the top bit; 0 is the top bit of the first data byte
 * @param bitLength 1 to 32
 * @param signed two's complement or not
 */
record BitField(int firstBit, int bitLength, boolean signed) {

  /** Whether the data reach as far as the number does. */
  boolean fits(Octets data) {
    return firstBit + bitLength <= data.size() * 8;
  }

  /** The raw number, or empty if the data end before it. */
  OptionalLong extract(Octets data) {
    return fits(data) ? OptionalLong.of(raw(data)) : OptionalLong.empty();
  }

  /** The raw number in data that reach as far. */
  long raw(Octets data) {
    long raw = 0;
    for (int bit = firstBit; bit < firstBit + bitLength; bit++) {
      raw = (raw << 1) | ((data.at(bit / 8) >> (7 - bit % 8)) & 1);
    }
    boolean isNegative = signed && (raw >> (bitLength - 1)) == 1;
    return isNegative ? raw - (1L << bitLength) : raw;
  }
}
