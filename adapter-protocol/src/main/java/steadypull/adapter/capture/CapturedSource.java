package steadypull.adapter.capture;

import java.time.Duration;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;

/** A source whose dialogue is kept. Used by one thread at a time. */
final class CapturedSource implements LinkSource {
  private final LinkSource source;
  private final CaptureRecorder recorder;

  CapturedSource(LinkSource source, CaptureRecorder recorder) {
    this.source = source;
    this.recorder = recorder;
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
  public int waysToOpen() {
    return source.waysToOpen();
  }

  @Override
  public Link open() throws LinkException {
    try {
      Link link = source.open();
      recorder.opened(now());
      return new Captured(link);
    } catch (LinkException refusal) {
      recorder.refused(now(), String.valueOf(refusal.getMessage()));
      throw refusal;
    }
  }

  private long now() {
    return source.clock().nanoTime();
  }

  private final class Captured implements Link {
    private final Link link;

    Captured(Link link) {
      this.link = link;
    }

    @Override
    public String address() {
      return link.address();
    }

    @Override
    public void write(byte[] bytes) throws LinkException {
      long before = now();
      try {
        link.write(bytes);
      } catch (LinkException gone) {
        throw lost(gone);
      }
      recorder.sent(before, bytes);
    }

    @Override
    public byte[] read(Duration patience) throws LinkException {
      try {
        byte[] came = link.read(patience);
        if (came.length > 0) {
          recorder.heard(now(), came);
        }
        return came;
      } catch (LinkException gone) {
        throw lost(gone);
      }
    }

    private LinkException lost(LinkException gone) {
      recorder.lost(now(), String.valueOf(gone.getMessage()));
      return gone;
    }

    @Override
    public void close() {
      recorder.closed(now());
      link.close();
    }
  }
}
