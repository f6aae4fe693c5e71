package steadypull.cli;

import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/** Reads the id of a temperature channel. */
final class TemperatureOption implements ITypeConverter<Channel> {
  @Override
  public Channel convert(String text) {
    return Channels.find(text)
        .filter(TemperatureOption::isTemperature)
        .orElseThrow(() -> refused(text));
  }

  private static TypeConversionException refused(String text) {
    String ids =
        Channels.all().stream()
            .filter(TemperatureOption::isTemperature)
            .map(Channel::id)
            .collect(Collectors.joining(", "));
    return new TypeConversionException(
        "expected a temperature channel (%s), found \"%s\"".formatted(ids, Printable.line(text)));
  }

  private static boolean isTemperature(Channel channel) {
    return channel.unit().equals("degC");
  }
}
