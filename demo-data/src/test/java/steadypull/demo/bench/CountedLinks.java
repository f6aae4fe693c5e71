package steadypull.demo.bench;

import java.time.Duration;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;

/** Counts how many links are open at once. Used by one thread. */
final class CountedLinks implements LinkSource {
  private final LinkSource source;
  private int open;
  private int mostOpen;
  private int opened;

  CountedLinks(LinkSource source) {
    this.source = source;
  }

  @Override
  public String address() {
    return source.address();
  }

  @Override
  public LinkClock clock() {
    return source.clock();
  }

  @Override
  public Link open() throws LinkException {
    Link link = source.open();
    open++;
    opened++;
    mostOpen = Math.max(mostOpen, open);
    return new Counted(link);
  }

  /** How many are open now. */
  int openNow() {
    return open;
  }

  /** How many were open at once at most. */
  int mostOpen() {
    return mostOpen;
  }

  /** How many were opened in all. */
  int opened() {
    return opened;
  }

  /** A link that says once that it was closed. */
  private final class Counted implements Link {
    private final Link link;
    private boolean isOpen = true;

    Counted(Link link) {
      this.link = link;
    }

    @Override
    public String address() {
      return link.address();
    }

    @Override
    public void write(byte[] bytes) throws LinkException {
      link.write(bytes);
    }

    @Override
    public byte[] read(Duration patience) throws LinkException {
      return link.read(patience);
    }

    @Override
    public void close() {
      open -= isOpen ? 1 : 0;
      isOpen = false;
      link.close();
    }
  }
}
