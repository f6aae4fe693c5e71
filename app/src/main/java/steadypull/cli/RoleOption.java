package steadypull.cli;

import java.util.List;
import java.util.Optional;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.NearMatch;
import steadypull.drive.SignalTable;
import steadypull.vehicle.SignalSource;
import steadypull.vehicle.Vehicle;

/** Reads {@code charge_air_temp_out=01.77.1}, or {@code =usual} for the usual source. */
final class RoleOption implements ITypeConverter<RoleOption.Role> {
  private static final String USUAL = "usual";

  /**
   * Which signal feeds a channel.
   *
   * @param channel one of the channel table
   * @param signalKey key of a signal; empty for the usual source
   */
  record Role(Channel channel, Optional<String> signalKey) {
    Vehicle applyTo(Vehicle vehicle) {
      return signalKey
          .map(key -> vehicle.withSource(new SignalSource(channel.id(), key)))
          .orElseGet(() -> vehicle.withoutSource(channel.id()));
    }
  }

  @Override
  public Role convert(String text) {
    int equals = text.indexOf('=');
    if (equals < 1) {
      throw new TypeConversionException(
          "expected CHANNEL=SIGNAL such as charge_air_temp_out=01.77.1, found \"%s\""
              .formatted(text));
    }
    String signal = text.substring(equals + 1).strip();
    return new Role(
        channel(text.substring(0, equals).strip()),
        signal.equals(USUAL) ? Optional.empty() : Optional.of(signal(signal)));
  }

  private static Channel channel(String id) {
    List<String> ids = Channels.all().stream().map(Channel::id).toList();
    return Channels.find(id)
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "expected a channel, found \"%s\".%s"
                        .formatted(id, NearMatch.question(id, ids))));
  }

  private static String signal(String key) {
    boolean isOwn = key.matches("22\\.[0-9A-F]{4}\\.\\d{1,3}");
    if (!isOwn && !SignalTable.knows(key)) {
      throw new TypeConversionException(
          "expected a signal such as 01.77.1 (service, parameter, number of the sensor) or usual,"
              + " found \"%s\"".formatted(key));
    }
    return key;
  }
}
