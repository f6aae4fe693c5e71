package steadypull.adapter.link;

import java.io.IOException;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Says what was tried on which address, what was expected, what was found and what can be done. */
public sealed class LinkException extends IOException permits MalformedAddressException {
  private final String address;

  /**
   * Builds the message from its parts.
   *
   * @param address the port or host that was used, as the user wrote it
   * @param attempt what was tried, for example "open the serial port"
   * @param found what happened instead, with the error code where there is one
   * @param remedy what the user can do about it, a whole sentence
   * @param cause the exception underneath, or null
   */
  public LinkException(
      String address, String attempt, String found, String remedy, @Nullable Throwable cause) {
    super("Could not " + attempt + " " + address + ": " + found + ". " + remedy, cause);
    this.address = Objects.requireNonNull(address);
  }

  /** The port or host that was used, as the user wrote it. */
  public String address() {
    return address;
  }
}
