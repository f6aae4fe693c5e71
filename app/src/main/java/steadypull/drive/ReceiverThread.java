package steadypull.drive;

import java.time.Duration;
import java.util.function.Consumer;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.ListeningSource;
import steadypull.adapter.position.PositionReport;
import steadypull.adapter.position.ReceiverListener;
import steadypull.adapter.position.ReceiverState;
import steadypull.adapter.position.SatelliteReceiver;

/**
 * Listens to a satellite receiver on a thread of its own while a drive lasts. Whatever happens to
 * it, the drive goes on.
 */
final class ReceiverThread implements AutoCloseable {
  private static final Duration PATIENCE = Duration.ofSeconds(5);

  private final SatelliteReceiver receiver;
  private final LinkClock stamps;
  private final Consumer<Arrival> arrivals;
  private final Thread thread;

  /**
   * Prepares the thread.
   *
   * @param stamps the clock of the vehicle's link, which is the trip's
   * @param arrivals takes what is heard, on the receiver's thread
   */
  ReceiverThread(ListeningSource source, LinkClock stamps, Consumer<Arrival> arrivals) {
    source.follow(stamps);
    this.receiver = new SatelliteReceiver(source, stamps, new Intake());
    this.stamps = stamps;
    this.arrivals = arrivals;
    this.thread = Thread.ofPlatform().name("receiver").unstarted(this::listen);
  }

  void start() {
    thread.start();
  }

  private void listen() {
    try {
      receiver.run();
    } catch (RuntimeException fault) {
      // Safe to go on: positions are an addition, and the drive is told that they end.
      String reason = "The satellite receiver is no longer listened to: " + FaultText.of(fault);
      arrivals.accept(
          new Arrival.ReceiverChanged(new ReceiverState.Absent(reason), stamps.nanoTime()));
    }
  }

  /** Ends the listening and waits until the port is free. */
  @Override
  public void close() {
    receiver.close();
    thread.interrupt();
    try {
      thread.join(PATIENCE);
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }

  private final class Intake implements ReceiverListener {
    @Override
    public void report(PositionReport report) {
      arrivals.accept(new Arrival.Located(report));
    }

    @Override
    public void receiverState(ReceiverState state, long nanoTime) {
      arrivals.accept(new Arrival.ReceiverChanged(state, nanoTime));
    }
  }
}
