package steadypull.adapter.link;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A serial port that the system shows, and where to look for a device that was there before.
 * Immutable.
 *
 * @param path what to open
 * @param name the short name, which may be used in place of the path
 * @param identity who is plugged in there, if that can be told
 */
record SerialPlace(String path, String name, Optional<UsbIdentity> identity) {

  /** All ports that the system shows now. */
  static List<SerialPlace> present() {
    return Arrays.stream(SerialPort.getCommPorts())
        .map(
            port ->
                new SerialPlace(
                    port.getSystemPortPath(), port.getSystemPortName(), UsbIdentity.of(port)))
        .toList();
  }

  private boolean isCalled(String device) {
    return path.equals(device)
        || name.toUpperCase(Locale.ROOT).equals(device.toUpperCase(Locale.ROOT));
  }

  /** Who is plugged in at a device name, if that can be told. */
  static Optional<UsbIdentity> whoIsAt(String device, List<SerialPlace> present) {
    return present.stream()
        .filter(place -> place.isCalled(device))
        .findFirst()
        .flatMap(SerialPlace::identity);
  }

  /**
   * What to open for a device that was open before.
   *
   * <p>First the name that the user wrote, if the device is there; else the one place where it is
   * now. Of several devices that cannot be told apart the one in the old socket is taken; without
   * one, the user's name stands, whatever is there.
   *
   * @param device the name that the user wrote
   * @param remembered who was there at the first opening
   * @param present ports that the system shows now
   */
  static String find(String device, Optional<UsbIdentity> remembered, List<SerialPlace> present) {
    if (remembered.isEmpty()) {
      return device;
    }
    UsbIdentity wanted = remembered.get();
    List<SerialPlace> alike =
        present.stream()
            .filter(place -> place.identity().filter(wanted::maybeSameAs).isPresent())
            .toList();
    return alike.stream()
        .filter(place -> place.isCalled(device))
        .findFirst()
        .or(() -> onlyOne(alike))
        .or(() -> onlyOne(inSocket(wanted.location(), alike)))
        .map(place -> place.isCalled(device) ? device : place.path())
        .orElse(device);
  }

  private static List<SerialPlace> inSocket(String location, List<SerialPlace> places) {
    return places.stream()
        .filter(place -> place.identity().map(UsbIdentity::location).equals(Optional.of(location)))
        .toList();
  }

  private static Optional<SerialPlace> onlyOne(List<SerialPlace> places) {
    return places.size() == 1 ? Optional.of(places.getFirst()) : Optional.empty();
  }
}
