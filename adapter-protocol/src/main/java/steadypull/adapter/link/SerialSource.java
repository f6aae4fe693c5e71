package steadypull.adapter.link;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * A serial device that can be opened again and again. Used by one thread at a time. Keeps the baud
 * rate as long as it brings what proves it; after an opening without that the next one is tried. A
 * device that was unplugged is found again under another name.
 */
final class SerialSource implements LinkSource {
  /** Usual rates of AT-command adapters, most frequent first (common practice, no source). */
  private static final int[] USUAL_BAUD_RATES = {115_200, 38_400, 9_600, 230_400, 500_000};

  private final String address;
  private final String device;
  private final int[] baudRates;
  private int present = -1;
  private boolean isRateProven;
  private Optional<UsbIdentity> identity = Optional.empty();

  SerialSource(String address, String device, OptionalInt baudRate) {
    this.address = address;
    this.device = device;
    this.baudRates =
        baudRate.isPresent() ? new int[] {baudRate.getAsInt()} : USUAL_BAUD_RATES.clone();
  }

  @Override
  public String address() {
    return address;
  }

  @Override
  public LinkClock clock() {
    return LinkClock.machine();
  }

  @Override
  public int waysToOpen() {
    return baudRates.length;
  }

  @Override
  public Link open() throws LinkException {
    List<SerialPlace> present = SerialPlace.present();
    String place = SerialPlace.find(device, identity, present);
    SerialPort port = findPort(place);
    int baudRate = nextBaudRate();
    isRateProven = false;
    port.setComPortParameters(
        baudRate, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY, /* useRS485Mode= */ false);
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, SerialLink.READ_MILLISECONDS, 0);
    if (!port.openPort()) {
      throw failure(port.getLastErrorCode());
    }
    identity = SerialPlace.whoIsAt(place, present).or(() -> identity);
    return ReadOnlyGate.before(new SerialLink(address, port, () -> isRateProven = true));
  }

  /** The rate for the next opening. */
  private int nextBaudRate() {
    if (!isRateProven) {
      present = (present + 1) % baudRates.length;
    }
    return baudRates[present];
  }

  private SerialPort findPort(String place) throws LinkException {
    try {
      return SerialPort.getCommPort(place);
    } catch (SerialPortInvalidPortException e) {
      throw new LinkException(
          address, "open the serial port", "there is no such port", portsThatExist(), e);
    }
  }

  private LinkException failure(int errorCode) {
    OpenFailure failure = OpenFailure.of(errorCode, System.getProperty("os.name", ""));
    String remedy = failure == OpenFailure.NO_SUCH_PORT ? portsThatExist() : failure.remedy();
    return new LinkException(
        address,
        "open the serial port",
        failure.found() + " (system error " + errorCode + ")",
        remedy,
        null);
  }

  private static String portsThatExist() {
    String names =
        SerialLinks.list().stream().map(SerialLinks.Port::name).collect(Collectors.joining(", "));
    return names.isEmpty()
        ? "No serial port is present: plug the adapter in or pair it, then try again."
        : "Ports present: " + names + ".";
  }
}
