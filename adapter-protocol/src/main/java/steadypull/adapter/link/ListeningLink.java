package steadypull.adapter.link;

import java.time.Duration;

/**
 * An open link that can only be heard: there is no way to say anything through it. Used by one
 * thread at a time.
 */
public final class ListeningLink implements AutoCloseable {
  private final Link link;

  ListeningLink(Link link) {
    this.link = link;
  }

  /**
   * Waits for bytes and takes what has come.
   *
   * @param patience how long to wait for the first byte, on this link's clock; zero or more
   * @return the bytes that have come, in order; empty when none came in time
   * @throws LinkException if the other side has gone
   */
  public byte[] read(Duration patience) throws LinkException {
    return link.read(patience);
  }

  /** Lets go of the port. Closing twice is harmless. */
  @Override
  public void close() {
    link.close();
  }
}
