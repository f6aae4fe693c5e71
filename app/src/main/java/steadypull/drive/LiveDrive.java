package steadypull.drive;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import steadypull.adapter.VehicleReader;
import steadypull.adapter.capture.Capture;
import steadypull.channel.UnitSystem;
import steadypull.store.TripEvent;
import steadypull.tablet.Tablet;

/**
 * A drive in progress: the reader on the port's thread, everything else on one pipeline thread
 * behind a queue. A slow pipeline slows the polling, never a person; no reading is lost. Whatever
 * fails on either thread ends the drive with its trip sealed.
 */
final class LiveDrive implements RunningDrive {
  private static final Duration PORT_PATIENCE = Duration.ofSeconds(5);

  /** A little more than the reader takes for the last trouble codes. */
  private static final Duration LAST_PATIENCE = Duration.ofSeconds(2);

  private final ArrivalQueue arrivals = new ArrivalQueue();
  private final CompletableFuture<DriveOutcome> outcome = new CompletableFuture<>();
  private final VehicleReader reader;
  private final Optional<ReceiverThread> receiver;
  private final TabletThread tablet;
  private final Optional<Capture> capture;
  private final PipelineOutput observer;
  private final DriveLog log;
  private final Thread portThread;
  private final Thread pipelineThread;
  private boolean isReleased;

  /**
   * What lies around a drive.
   *
   * @param wall tells when it begins
   * @param tablet records it
   */
  record Surroundings(InstantSource wall, Tablet tablet) {}

  /** Prepares a drive; nothing is opened before {@link #start}. */
  LiveDrive(
      DriveRoute route, DriveLog.Keeping keeping, Surroundings around, PipelineOutput observer) {
    long startNanos = route.source().clock().nanoTime();
    Instant start = around.wall().instant();
    log = new DriveLog(route, keeping, new TripClock(start, startNanos), observer);
    reader = new VehicleReader(route.source(), route.readerSettings(), new PortIntake(arrivals));
    capture = route.capture();
    this.observer = observer;
    receiver =
        route
            .receiver()
            .map(
                source ->
                    new ReceiverThread(
                        source, route.source().clock(), arrivals::putWhenThereIsRoom));
    tablet = new TabletThread(around.tablet(), route.source().clock(), arrivals::put);
    portThread = Thread.ofPlatform().name("port").unstarted(this::readPort);
    pipelineThread = Thread.ofPlatform().name("pipeline").unstarted(this::runPipeline);
  }

  /** The pipeline, which waits for the others when it ends, comes last. */
  void start() {
    portThread.start();
    receiver.ifPresent(ReceiverThread::start);
    tablet.start();
    pipelineThread.start();
  }

  @Override
  public CompletableFuture<DriveOutcome> outcome() {
    return outcome;
  }

  @Override
  public void mark() {
    arrivals.call(new Arrival.Answered(TripEvent.Kind.MARK));
  }

  @Override
  public void acknowledge() {
    arrivals.call(new Arrival.Answered(TripEvent.Kind.ACKNOWLEDGED));
  }

  @Override
  public void snooze() {
    arrivals.call(new Arrival.Answered(TripEvent.Kind.SNOOZED));
  }

  @Override
  public void show() {
    arrivals.call(new Arrival.Answered(TripEvent.Kind.RESUMED));
  }

  @Override
  public void speakIn(UnitSystem units) {
    arrivals.call(new Arrival.UnitsChosen(units));
  }

  @Override
  public void close() {
    arrivals.put(new Arrival.End());
    if (Thread.currentThread() != pipelineThread) {
      outcome.handle((ended, fault) -> true).join();
    }
  }

  private void runPipeline() {
    Optional<CompletionException> failure = Optional.empty();
    try {
      takeAll();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    } catch (RuntimeException | Error fault) {
      failure = Optional.of(new CompletionException(told(fault), fault));
    }
    end(failure);
  }

  /** Nobody may wait for ever, whatever fails: the outcome is completed in every case. */
  private void end(Optional<CompletionException> failure) {
    reader.close();
    try {
      if (failure.isEmpty()) {
        takeLast();
      }
      portThread.interrupt();
      DriveOutcome ended = log.end();
      release();
      failure.ifPresentOrElse(outcome::completeExceptionally, () -> outcome.complete(ended));
    } catch (RuntimeException | Error fault) {
      outcome.completeExceptionally(fault);
    } finally {
      release();
    }
  }

  /** Gives every port and file back; twice is harmless. */
  private void release() {
    portThread.interrupt();
    awaitPort();
    receiver.ifPresent(ReceiverThread::close);
    tablet.close();
    if (!isReleased) {
      isReleased = true;
      capture.ifPresent(this::endCapture);
    }
  }

  /** After the port's thread has ended: nothing more is written. */
  private void endCapture(Capture ending) {
    ending.close();
    observer.captured(new RawCapture.Kept(ending.file(), ending.trouble()));
  }

  /** What control units tell while the reader comes to its end still belongs to the trip. */
  private void takeLast() {
    try {
      boolean isReading = log.hearsVehicle();
      while (isReading) {
        Optional<Arrival> next = arrivals.poll(LAST_PATIENCE.toMillis());
        if (next.orElse(null) instanceof Arrival.Diagnosed told) {
          log.takeLast(told);
        }
        isReading = next.isPresent() && !(next.get() instanceof Arrival.PortEnded);
      }
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }

  private void takeAll() throws InterruptedException {
    boolean isGoing = true;
    while (isGoing) {
      Arrival next = arrivals.take();
      takeCalls();
      isGoing = log.take(next);
    }
  }

  private void takeCalls() {
    for (Optional<Arrival> call = arrivals.pollCall();
        call.isPresent();
        call = arrivals.pollCall()) {
      log.take(call.get());
    }
  }

  /** The observer may be what failed; then it is not told, but the trip is kept all the same. */
  private String told(Throwable fault) {
    try {
      return log.fail(fault);
    } catch (RuntimeException again) {
      fault.addSuppressed(again);
      return FaultText.of(fault);
    }
  }

  /** Whoever begins another drive after this one finds the port free. */
  private void awaitPort() {
    try {
      portThread.join(PORT_PATIENCE);
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }

  private void readPort() {
    try {
      reader.run();
    } catch (RuntimeException | Error fault) {
      arrivals.put(new Arrival.Failed(fault));
    } finally {
      arrivals.put(new Arrival.PortEnded());
    }
  }
}
