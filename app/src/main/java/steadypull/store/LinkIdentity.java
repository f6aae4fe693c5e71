package steadypull.store;

import java.util.Objects;

/**
 * Who answered on a trip. Every text may be empty: not told. Immutable.
 *
 * @param adapter as the adapter calls itself
 * @param protocol of the vehicle's bus, in the words of the link
 * @param vehicleNumberHash tells vehicles apart without telling the number: a hash of the vehicle
 *     identification number
 */
public record LinkIdentity(String adapter, String protocol, String vehicleNumberHash) {
  /** Nobody was told. */
  public static final LinkIdentity UNKNOWN = new LinkIdentity("", "", "");

  public LinkIdentity {
    Objects.requireNonNull(adapter);
    Objects.requireNonNull(protocol);
    Objects.requireNonNull(vehicleNumberHash);
  }
}
