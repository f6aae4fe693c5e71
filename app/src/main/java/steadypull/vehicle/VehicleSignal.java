package steadypull.vehicle;

import java.util.Objects;
import java.util.regex.Pattern;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.UnitConversion;

/**
 * A signal of this vehicle behind an ISO 14229 data identifier, the way signal tables are written
 * in the trade.
 *
 * @param channelId channel that it feeds
 * @param identifier data identifier, 0 to 0xFFFF
 * @param header request header, 1 to 8 hex digits, such as {@code 7E1}
 * @param firstBit offset of the most significant bit in the data, 0 is the top bit of the first
 *     byte
 * @param bitLength 1 to 32
 * @param signed two's complement or not
 * @param scale physical value = raw * scale + offset; not zero
 * @param offset see scale
 * @param unit unit of the physical value; that of the channel or one that can be converted to it
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
  private static final Pattern HEADER = Pattern.compile("[0-9A-Fa-f]{1,8}");

  public VehicleSignal {
    Objects.requireNonNull(unit);
    require(identifier >= 0 && identifier <= 0xFFFF, "identifier is 0000 to FFFF", identifier);
    require(HEADER.matcher(header).matches(), "header is 1 to 8 hex digits", header);
    require(firstBit >= 0, "first_bit is 0 or more", firstBit);
    require(bitLength >= 1 && bitLength <= 32, "bit_length is 1 to 32", bitLength);
    require(Double.isFinite(scale) && scale != 0, "scale is a number other than 0", scale);
    require(Double.isFinite(offset), "offset is a number", offset);
    require(
        Double.isFinite(lowest) && Double.isFinite(highest) && lowest < highest,
        "range rises",
        lowest + " to " + highest);
    requireConvertible(new Channel(channelId, unit));
  }

  /** The channel that is fed: the known one of that id, else one of the vehicle's own. */
  public Channel channel() {
    return Channels.find(channelId).orElseGet(() -> new Channel(channelId, unit));
  }

  private static void requireConvertible(Channel given) {
    String expected = Channels.find(given.id()).map(Channel::unit).orElse(given.unit());
    require(
        UnitConversion.between(given.unit(), expected).isPresent(),
        "unit of %s can become %s".formatted(given.id(), expected),
        given.unit());
  }

  private static void require(boolean holds, String rule, Object found) {
    if (!holds) {
      throw new IllegalArgumentException("A signal's " + rule + ", found " + found);
    }
  }
}
