package steadypull.demo.bench;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;
import steadypull.demo.road.Drive;
import steadypull.demo.road.Fix;
import steadypull.demo.road.ReceiverQuality;
import steadypull.demo.road.SatelliteReceiver;

/**
 * A satellite receiver that speaks once a second of where it believes a drive to be. It errs as
 * receivers behind windscreens do, the same seed the same way, and sees no satellite in tunnels.
 * Where the vehicle's own bench is in the same program it lives in that one's time. One thread at a
 * time.
 */
final class BenchReceiver implements LinkSource {
  private static final long SECOND_NANOS = 1_000_000_000;

  private final String address;
  private final BenchSettings settings;
  private final SatelliteReceiver receiver;
  private ReceiverClock clock;
  private final Drive drive;
  private final ReceiverSpeech speech = new ReceiverSpeech();
  private long nextSecond = 1;
  private Optional<Fix> fix = Optional.empty();
  private long fixSecond;

  BenchReceiver(String address, BenchSettings settings) {
    this.address = address;
    this.settings = settings;
    clock = new ReceiverClock.Own(new BenchClock(settings.speed()));
    receiver = new SatelliteReceiver(ReceiverQuality.usual(), settings.seed());
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
  public void follow(LinkClock vehicle) {
    if (vehicle instanceof BenchClock leading) {
      clock = new ReceiverClock.Followed(leading);
    }
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
    while (fixSecond < nextSecond) {
      look(++fixSecond);
    }
    String said =
        settings.has(Fault.Kind.SILENT, (double) nextSecond) || fix.isEmpty()
            ? speech.withoutSatellites(nextSecond)
            : speech.of(
                nextSecond, fix.get(), drive.place().orElseThrow(), drive.state().motion().speed());
    nextSecond++;
    return said.getBytes(StandardCharsets.US_ASCII);
  }

  /** Its error wanders on whether somebody listens or not. */
  private void look(long second) {
    drive.advanceTo(settings.startSeconds() + (double) second);
    fix = drive.place().flatMap(place -> receiver.next(place, drive.isUnderRoof()));
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
      clock.await(Math.min(due, deadline));
      requirePresent("read from");
      return clock.nanoTime() >= due ? speak() : new byte[0];
    }

    @Override
    public void close() {}
  }
}
