package steadypull.demo.bench;

import java.util.Optional;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkProvider;
import steadypull.adapter.link.LinkSource;
import steadypull.adapter.link.MalformedAddressException;

/**
 * Finds {@code demo-receiver:SCENARIO[?speed=20&seed=1&start=60&fault=silent@120-180]}: the
 * satellite receiver in the vehicle of a scenario. It keeps its own time: with the same settings as
 * the vehicle's address it is where the vehicle is. While vanished its port is gone, while silent
 * it sees no satellites. Immutable.
 */
public final class ReceiverLinks implements LinkProvider {
  private static final String PREFIX = "demo-receiver:";

  @Override
  public Optional<LinkSource> find(String address) throws LinkException {
    if (!address.startsWith(PREFIX)) {
      return Optional.empty();
    }
    BenchSettings settings = BenchAddress.parse("demo:" + address.substring(PREFIX.length()));
    if (settings.speed().isEmpty()) {
      throw new MalformedAddressException(
          address,
          "a receiver that keeps pace with the day",
          "speed=max, which does not",
          "Write a speed, such as speed=20, here and at the vehicle's port.",
          null);
    }
    return Optional.of(new BenchReceiver(address, settings));
  }
}
