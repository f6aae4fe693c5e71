package steadypull.vehicle;

import java.util.Objects;

/**
 * A signal of this vehicle behind an ISO 14229 data identifier, the way signal tables are written
 * in the trade.
 *
 * @param channelId channel that it feeds
 * @param identifier data identifier, 0 to 0xFFFF
 * @param header request header in hex, such as {@code 7E1}
 * @param firstBit offset of the most significant bit in the data, 0 is the top bit of the first
 *     byte
 * @param bitLength 1 to 32
 * @param signed two's complement or not
 * @param scale physical value = raw * scale + offset
 * @param offset see scale
 * @param unit unit of the physical value
 * @param lowest least plausible physical value
 * @param highest greatest plausible physical value
 */
public record VehicleSignal(
    String channelId,
    int identifier,
    String header,
    int firstBit,
    int bitLength,
    boolean signed,
    double scale,
    double offset,
    String unit,
    double lowest,
    double highest) {
  public VehicleSignal {
    Objects.requireNonNull(channelId);
    Objects.requireNonNull(header);
    Objects.requireNonNull(unit);
  }
}
