package steadypull.adapter.link;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A port that is only listened to, such as that of a satellite receiver. A serial port without a
 * rate is tried at the usual ones. Used by one thread at a time.
 */
public final class ListeningSource {
  /** NMEA 0183 has 4800 baud, its high-speed form 38400; the others are common practice. */
  private static final int[] USUAL_BAUD_RATES = {9600, 4800, 38_400, 115_200};

  private final String address;
  private final List<LinkSource> ways;
  private int present;

  private ListeningSource(String address, List<LinkSource> ways) {
    this.address = address;
    this.ways = List.copyOf(ways);
  }

  /**
   * Recognises an address by its form, without opening it.
   *
   * @param providers kinds of addresses, tried in this order
   * @return empty if no provider knows addresses of this form
   * @throws LinkException if one does but the address is malformed
   */
  public static Optional<ListeningSource> find(String address, List<LinkProvider> providers)
      throws LinkException {
    for (LinkProvider provider : providers) {
      Optional<LinkSource> found = provider.find(address);
      if (found.isPresent()) {
        return Optional.of(new ListeningSource(address, ways(provider, found.get())));
      }
    }
    return Optional.empty();
  }

  private static List<LinkSource> ways(LinkProvider provider, LinkSource found)
      throws LinkException {
    if (!(provider instanceof SerialLinks) || found.address().indexOf('?') >= 0) {
      return List.of(found);
    }
    List<LinkSource> ways = new ArrayList<>();
    for (int baudRate : USUAL_BAUD_RATES) {
      provider.find(found.address() + "?baud=" + baudRate).ifPresent(ways::add);
    }
    return ways;
  }

  /** The port or host, as the user wrote it. */
  public String address() {
    return address;
  }

  /** The clock of every link opened here. It runs on while no link is open. */
  public LinkClock clock() {
    return ways.get(present).clock();
  }

  /** Lives in the time of the vehicle's link, as {@link LinkSource#follow} says. */
  public void follow(LinkClock vehicle) {
    ways.forEach(way -> way.follow(vehicle));
  }

  /**
   * Opens the port the way it was opened last.
   *
   * @throws LinkException if it does not exist, is in use or refuses
   */
  public ListeningLink open() throws LinkException {
    return new ListeningLink(ways.get(present).open());
  }

  /** Lets the next opening be at another rate: nothing sensible was heard at this one. */
  public void tryAnotherWay() {
    present = (present + 1) % ways.size();
  }
}
