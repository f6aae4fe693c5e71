package steadypull.adapter.link;

import org.jspecify.annotations.Nullable;

/**
 * An address that is of a kind but not of its form: nothing was opened, and trying again is no use.
 */
public final class MalformedAddressException extends LinkException {
  /**
   * Builds the message from its parts.
   *
   * @param address as the user wrote it
   * @param expected the form of such an address
   * @param found what is there instead
   * @param remedy what to write, a whole sentence
   * @param cause the exception underneath, or null
   */
  public MalformedAddressException(
      String address, String expected, String found, String remedy, @Nullable Throwable cause) {
    super(address, "read the address", "expected " + expected + ", found " + found, remedy, cause);
  }
}
