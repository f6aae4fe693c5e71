package steadypull.adapter.capture;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;

/** A port to be captured: gives one piece with each read, in its own time. */
final class ScriptedPort implements LinkSource, LinkClock, Link {
  private record Piece(long nanos, String text) {}

  private final Deque<Piece> pieces = new ArrayDeque<>();
  @Nullable LinkException failure;
  private long nanoTime = 5_000_000_000L;

  void says(double afterSeconds, String text) {
    pieces.add(new Piece(Math.round(afterSeconds * 1e9), text));
  }

  LinkException failure(String found) {
    return new LinkException(address(), "read from", found, "Plug it in.", /* cause= */ null);
  }

  @Override
  public String address() {
    return "scripted:port";
  }

  @Override
  public LinkClock clock() {
    return this;
  }

  @Override
  public Link open() throws LinkException {
    fail();
    return this;
  }

  @Override
  public void write(byte[] bytes) throws LinkException {
    fail();
  }

  @Override
  public byte[] read(Duration patience) throws LinkException {
    fail();
    Piece next = pieces.poll();
    nanoTime += next == null ? patience.toNanos() : next.nanos();
    return next == null ? new byte[0] : next.text().getBytes(StandardCharsets.ISO_8859_1);
  }

  private void fail() throws LinkException {
    LinkException failing = failure;
    if (failing != null) {
      throw failing;
    }
  }

  @Override
  public long nanoTime() {
    return nanoTime;
  }

  @Override
  public void pause(Duration span) {
    nanoTime += span.toNanos();
  }

  @Override
  public void close() {}
}
