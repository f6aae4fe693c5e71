package steadypull.adapter.link;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * What a serial device on the universal serial bus tells about itself. Its name may be another one
 * each time it is plugged in; this is not. Immutable.
 *
 * @param vendor vendor number, 1 to 0xFFFF
 * @param product product number, 0 to 0xFFFF
 * @param serialNumber serial number, or empty text where the device has none
 * @param location the socket that it is plugged into, or empty text where the system does not tell
 */
record UsbIdentity(int vendor, int product, String serialNumber, String location) {
  UsbIdentity {
    Objects.requireNonNull(serialNumber);
    Objects.requireNonNull(location);
    if (vendor < 1 || vendor > 0xFFFF || product < 0 || product > 0xFFFF) {
      throw new IllegalArgumentException(
          "Vendor and product are numbers of 16 bits, found %d and %d".formatted(vendor, product));
    }
  }

  /** The identity of a port, or empty for ports that are not on that bus. */
  static Optional<UsbIdentity> of(SerialPort port) {
    return port.getVendorID() > 0 && port.getProductID() >= 0
        ? Optional.of(
            new UsbIdentity(
                port.getVendorID(),
                port.getProductID(),
                told(port.getSerialNumber()),
                told(port.getPortLocation())))
        : Optional.empty();
  }

  /** The serial library writes "Unknown", or a location of zeros, where it knows nothing. */
  private static String told(String text) {
    boolean isTold = !text.toLowerCase(Locale.ROOT).equals("unknown") && !text.equals("0-0");
    return isTold ? text : "";
  }

  /** Whether both are the same kind of device, and the same one as far as they tell. */
  boolean maybeSameAs(UsbIdentity other) {
    return vendor == other.vendor
        && product == other.product
        && serialNumber.equals(other.serialNumber);
  }
}
