package steadypull.drive;

import java.util.Objects;

/**
 * A place where an adapter may be.
 *
 * @param address what to open: a device, {@code tcp://host:port} or {@code demo:SCENARIO}
 * @param title short name for people
 * @param detail one line more; may be empty
 * @param simulated whether there is no vehicle behind it
 */
public record PortChoice(String address, String title, String detail, boolean simulated) {
  public PortChoice {
    Objects.requireNonNull(address);
    Objects.requireNonNull(title);
    Objects.requireNonNull(detail);
  }
}
