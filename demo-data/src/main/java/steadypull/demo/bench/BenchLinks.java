package steadypull.demo.bench;

import java.time.Duration;
import java.util.Optional;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkProvider;
import steadypull.adapter.link.LinkSource;

/**
 * Finds {@code demo:SCENARIO[?setting&setting...]}, such as {@code
 * demo:long-hot-grade?speed=20&adapter=slow&fault=vanish@120}. Every address found is a bench of
 * its own. {@link BenchAddress} lists the settings. Immutable.
 */
public final class BenchLinks implements LinkProvider {
  private static final String PREFIX = "demo:";

  @Override
  public Optional<LinkSource> find(String address) throws LinkException {
    return address.startsWith(PREFIX)
        ? Optional.of(new Bench(address, BenchAddress.parse(address)))
        : Optional.empty();
  }

  /**
   * How long the drive behind an address lasts on its link's clock; then the engine is off.
   *
   * @return empty if the address is of another kind
   * @throws LinkException if the address is malformed
   */
  public static Optional<Duration> lasts(String address) throws LinkException {
    if (!address.startsWith(PREFIX)) {
      return Optional.empty();
    }
    double seconds = BenchAddress.parse(address).lasts();
    return Optional.of(Duration.ofMillis(Math.round(seconds * 1000)));
  }
}
