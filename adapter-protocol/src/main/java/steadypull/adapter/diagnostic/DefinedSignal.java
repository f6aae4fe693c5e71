package steadypull.adapter.diagnostic;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import steadypull.adapter.frame.Octets;

/**
 * A vehicle's own signal behind an ISO 14229 data identifier, defined by data alone.
 *
 * @param identifier data identifier, 0 to 0xFFFF
 * @param header request header in hex, such as {@code 7E1}; a physical address
 * @param name for people
 * @param firstBit bit offset of the most significant bit in the data after the identifier, 0 is the
 *     top bit of the first byte; big-endian
 * @param bitLength 1 to 32
 * @param signed whether the raw value is two's complement
 * @param scale physical value = raw * scale + offset
 * @param offset see scale
 * @param unit unit of the physical value
 * @param lowest least plausible physical value; values outside are dropped
 * @param highest greatest plausible physical value
 */
public record DefinedSignal(
    int identifier,
    String header,
    String name,
    int firstBit,
    int bitLength,
    boolean signed,
    double scale,
    double offset,
    String unit,
    double lowest,
    double highest) {
  public DefinedSignal {
    Objects.requireNonNull(header);
    Objects.requireNonNull(name);
    Objects.requireNonNull(unit);
    if (identifier < 0 || identifier > 0xFFFF) {
      throw new IllegalArgumentException(
          "A data identifier is 0000 to FFFF, found " + Integer.toHexString(identifier));
    }
    if (firstBit < 0 || bitLength < 1 || bitLength > 32) {
      throw new IllegalArgumentException(
          "A signal has 1 to 32 bits from bit 0 on, found %d bits from bit %d"
              .formatted(bitLength, firstBit));
    }
    if (!Double.isFinite(scale) || !Double.isFinite(offset)) {
      throw new IllegalArgumentException(
          "Scale and offset of a signal are finite, found %s and %s".formatted(scale, offset));
    }
    if (!(lowest < highest)) {
      throw new IllegalArgumentException(
          "The range of a signal rises, found %s to %s".formatted(lowest, highest));
    }
  }

  /**
   * Decodes the data after the identifier.
   *
   * @return the value, or empty if the data are too short or the value is out of the range
   */
  public Optional<SignalValue> decode(Octets data) {
    OptionalLong raw = new BitField(firstBit, bitLength, signed).extract(data);
    if (raw.isEmpty()) {
      return Optional.empty();
    }
    double value = raw.getAsLong() * scale + offset;
    return value >= lowest && value <= highest
        ? Optional.of(new SignalValue(signal(), value))
        : Optional.empty();
  }

  /** The signal that readings of this definition carry. */
  public Signal signal() {
    return new Signal("22.%04X.%d".formatted(identifier, firstBit), name, unit);
  }
}
