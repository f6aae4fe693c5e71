package steadypull.drive;

import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import steadypull.adapter.LinkState;
import steadypull.adapter.ReaderListener;
import steadypull.adapter.Reading;
import steadypull.adapter.VehicleReader;
import steadypull.store.TripEvent;

/**
 * A drive in progress: the reader on the port's thread, everything else on one pipeline thread
 * behind a bounded queue. A slow pipeline slows the polling; it never loses a reading.
 */
final class LiveDrive implements RunningDrive {
  private static final int QUEUE_LENGTH = 2048;

  private final BlockingQueue<Arrival> arrivals = new ArrayBlockingQueue<>(QUEUE_LENGTH);
  private final CompletableFuture<DriveOutcome> outcome = new CompletableFuture<>();
  private final VehicleReader reader;
  private final DriveLog log;
  private final Thread portThread;
  private final Thread pipelineThread;
  private volatile boolean ending;

  /** Prepares a drive; nothing is opened before {@link #start}. */
  LiveDrive(
      DriveRoute route, DriveLog.Keeping keeping, InstantSource wall, PipelineOutput observer) {
    long startNanos = route.source().clock().nanoTime();
    Instant start = wall.instant();
    log = new DriveLog(route, keeping, new TripClock(start, startNanos), observer);
    reader = new VehicleReader(route.source(), route.readerSettings(), new Intake());
    portThread = Thread.ofPlatform().name("port").unstarted(reader);
    pipelineThread = Thread.ofPlatform().name("pipeline").unstarted(this::runPipeline);
  }

  void start() {
    pipelineThread.start();
    portThread.start();
  }

  @Override
  public CompletableFuture<DriveOutcome> outcome() {
    return outcome;
  }

  @Override
  public void mark() {
    put(new Arrival.Answered(TripEvent.Kind.MARK));
  }

  @Override
  public void acknowledge() {
    put(new Arrival.Answered(TripEvent.Kind.ACKNOWLEDGED));
  }

  @Override
  public void snooze() {
    put(new Arrival.Answered(TripEvent.Kind.SNOOZED));
  }

  @Override
  public void show() {
    put(new Arrival.Answered(TripEvent.Kind.RESUMED));
  }

  @Override
  public void close() {
    put(new Arrival.End());
    outcome.join();
  }

  private void runPipeline() {
    try {
      boolean going = true;
      while (going) {
        going = log.take(arrivals.take());
      }
      stopReading();
      outcome.complete(log.end());
    } catch (InterruptedException interrupted) {
      stopReading();
      outcome.complete(log.end());
    } catch (RuntimeException fault) {
      stopReading();
      outcome.completeExceptionally(fault);
    }
  }

  /** Lets go of the port; a reader that waits for room in the queue is woken. */
  private void stopReading() {
    ending = true;
    arrivals.clear();
    reader.close();
    portThread.interrupt();
  }

  private void put(Arrival arrival) {
    if (ending) {
      return;
    }
    try {
      arrivals.put(arrival);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private final class Intake implements ReaderListener {
    @Override
    public void reading(Reading reading) {
      put(new Arrival.Heard(reading));
    }

    @Override
    public void linkState(LinkState state, long nanoTime) {
      put(new Arrival.LinkChanged(state, nanoTime));
    }
  }
}
