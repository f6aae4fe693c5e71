package steadypull.adapter.link;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Knows serial devices, pseudo terminals and wireless serial ports: {@code /dev/ttyUSB0}, {@code
 * COM3}, {@code /dev/ttyUSB0?baud=38400}. Without a rate the usual ones are tried in turn, one with
 * each opening, until a prompt was heard. Immutable.
 */
public final class SerialLinks implements LinkProvider {
  private static final Pattern DEVICE =
      Pattern.compile("(/[^?]+|(?i:COM)[0-9]+|\\\\\\\\\\.\\\\[^?]+|(?:tty|cu\\.|rfcomm)[^?]+)");
  private static final Pattern RATE = Pattern.compile("baud=([0-9]{3,7})");

  /**
   * A serial port of this machine.
   *
   * @param name what to write as an address, such as {@code /dev/ttyUSB0}
   * @param description what the system says about the device; the name where it says nothing
   */
  public record Port(String name, String description) {}

  /** The serial ports that the system shows now, by name. */
  public static List<Port> list() {
    return Arrays.stream(SerialPort.getCommPorts())
        .map(port -> new Port(port.getSystemPortPath(), port.getDescriptivePortName()))
        .sorted(Comparator.comparing(Port::name))
        .toList();
  }

  @Override
  public Optional<LinkSource> find(String address) throws LinkException {
    int mark = address.indexOf('?');
    String device = mark < 0 ? address : address.substring(0, mark);
    if (!DEVICE.matcher(device).matches()) {
      return Optional.empty();
    }
    OptionalInt baudRate =
        mark < 0 ? OptionalInt.empty() : baudRate(address, address.substring(mark + 1));
    return Optional.of(new SerialSource(address, device, baudRate));
  }

  private static OptionalInt baudRate(String address, String option) throws LinkException {
    Matcher rate = RATE.matcher(option);
    if (!rate.matches()) {
      throw new MalformedAddressException(
          address,
          "the rate of the line behind the question mark, such as baud=38400",
          "\"" + option + "\"",
          "Leave the part after the question mark away, and the usual rates are tried in turn.",
          null);
    }
    return OptionalInt.of(Integer.parseInt(rate.group(1)));
  }
}
