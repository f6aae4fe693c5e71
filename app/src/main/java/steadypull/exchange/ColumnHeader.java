package steadypull.exchange;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.NearMatch;
import steadypull.channel.UnitConversion;

/** What a header of the form {@code id[unit]} means. Stateless. */
final class ColumnHeader {
  private ColumnHeader() {}

  /** The channel that is fed: a known one in its own unit, another as it is written. */
  static Channel channel(Channel written) {
    return Channels.find(written.id()).orElse(written);
  }

  /** Turns the unit that is written into the channel's. */
  static Optional<UnitConversion> conversion(Channel written) {
    return UnitConversion.between(written.unit(), channel(written).unit());
  }

  /** What is wrong with the unit, or empty if it can be converted. */
  static Optional<String> unitFault(Channel written) {
    if (conversion(written).isPresent()) {
      return Optional.empty();
    }
    List<String> units = UnitConversion.unitsFor(channel(written).unit());
    return Optional.of(
        "expected one of the units %s for %s, found \"%s\""
            .formatted(String.join(", ", units), written.id(), written.header()));
  }

  /** A question after the headers that somebody may have meant. */
  static String near(String header) {
    List<String> known = Channels.all().stream().map(Channel::header).toList();
    List<String> near =
        Stream.concat(
                NearMatch.of(header, known).stream(),
                ChannelWords.shipped().best(header).stream().map(Channel::header))
            .distinct()
            .limit(3)
            .toList();
    return near.isEmpty() ? "" : " Did you mean " + String.join(", ", near) + "?";
  }
}
