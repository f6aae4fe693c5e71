package steadypull.demo.bench;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;
import steadypull.demo.road.Drive;

/** A satellite receiver that speaks once a second of where a drive is. One thread at a time. */
final class BenchReceiver implements LinkSource {
  private static final long SECOND_NANOS = 1_000_000_000;

  private final String address;
  private final BenchSettings settings;
  private final BenchClock clock;
  private final Drive drive;
  private final ReceiverSpeech speech = new ReceiverSpeech();
  private long nextSecond = 1;

  BenchReceiver(String address, BenchSettings settings) {
    this.address = address;
    this.settings = settings;
    clock = new BenchClock(settings.speed());
    drive = new Drive(settings.scenario(), settings.seed());
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
    nextSecond = Math.max(nextSecond, clock.nanoTime() / SECOND_NANOS + 1);
    return new Opened();
  }

  private void requirePresent(String attempt) throws LinkException {
    if (settings.has(Fault.Kind.VANISH, clock.nanoTime() / (double) SECOND_NANOS)) {
      throw new LinkException(
          address,
          attempt,
          "the receiver is gone",
          "Plug it in again; a fault was asked for in the address.",
          null);
    }
  }

  private byte[] speak() {
    double seconds = nextSecond;
    drive.advanceTo(settings.startSeconds() + seconds);
    String said =
        settings.has(Fault.Kind.SILENT, seconds)
            ? speech.withoutSatellites(nextSecond)
            : speech.of(nextSecond, drive.place(), drive.state().motion().speed());
    nextSecond++;
    return said.getBytes(StandardCharsets.US_ASCII);
  }

  private final class Opened implements Link {
    @Override
    public String address() {
      return address;
    }

    /** A receiver takes no orders here. */
    @Override
    public void write(byte[] bytes) {}

    @Override
    public byte[] read(Duration patience) throws LinkException {
      long deadline = clock.nanoTime() + patience.toNanos();
      long due = nextSecond * SECOND_NANOS;
      clock.advanceTo(Math.min(due, deadline));
      requirePresent("read from");
      return due <= deadline ? speak() : new byte[0];
    }

    @Override
    public void close() {}
  }
}
