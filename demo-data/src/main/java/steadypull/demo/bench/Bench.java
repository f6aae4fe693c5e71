package steadypull.demo.bench;

import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;

/** A bench in memory. Adapter and vehicle live on while no link is open. */
final class Bench implements LinkSource {
  private static final double NANOS = 1e9;

  private final String address;
  private final BenchSettings settings;
  private final BenchClock clock;
  private final BenchAdapter adapter;

  Bench(String address, BenchSettings settings) {
    this.address = address;
    this.settings = settings;
    clock = new BenchClock(settings.speed());
    adapter = BenchAdapter.of(settings);
  }

  @Override
  public String address() {
    return address;
  }

  @Override
  public LinkClock clock() {
    return clock;
  }

  @Override
  public Link open() throws LinkException {
    requirePresent("open");
    return new BenchLink(this);
  }

  BenchClock benchClock() {
    return clock;
  }

  BenchAdapter adapter() {
    return adapter;
  }

  /** How long the serial line takes for a character. */
  long characterNanos() {
    return settings.adapter().characterNanos();
  }

  /** Fails while the port is gone. */
  void requirePresent(String attempt) throws LinkException {
    if (settings.has(Fault.Kind.VANISH, clock.nanoTime() / NANOS)) {
      throw new LinkException(
          address,
          attempt,
          "the port is gone",
          "Plug the adapter in again; a fault of this bench was asked for in the address.",
          null);
    }
  }
}
