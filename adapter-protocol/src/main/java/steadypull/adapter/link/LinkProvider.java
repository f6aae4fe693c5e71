package steadypull.adapter.link;

import java.util.Optional;

/** Knows one kind of address, such as serial devices, {@code tcp://host:port} or a bench. */
@FunctionalInterface
public interface LinkProvider {

  /**
   * Recognises an address by its form, without opening it.
   *
   * @return the source, or empty if the address is of another kind
   * @throws MalformedAddressException if the address is of this kind but malformed
   * @throws LinkException if what it names cannot be used
   */
  Optional<LinkSource> find(String address) throws LinkException;
}
