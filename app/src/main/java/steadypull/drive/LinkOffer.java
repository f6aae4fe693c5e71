package steadypull.drive;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import steadypull.adapter.link.LinkProvider;

/**
 * A further kind of link that the program brings along, such as a simulated vehicle.
 *
 * @param provider recognises and opens its addresses
 * @param choices what can be chosen from a list
 * @param vehicleFile the vehicle file that goes with an address, if the address is of this kind
 * @param lasts how long an address has something to tell, on its link's clock, if it ends
 * @param receivers recognises and opens addresses of satellite receivers
 */
public record LinkOffer(
    LinkProvider provider,
    List<PortChoice> choices,
    Function<String, Optional<String>> vehicleFile,
    Function<String, Optional<Duration>> lasts,
    LinkProvider receivers) {
  public LinkOffer {
    choices = List.copyOf(choices);
  }

  /** An offer without satellite receivers. */
  public LinkOffer(
      LinkProvider provider,
      List<PortChoice> choices,
      Function<String, Optional<String>> vehicleFile,
      Function<String, Optional<Duration>> lasts) {
    this(provider, choices, vehicleFile, lasts, address -> Optional.empty());
  }
}
