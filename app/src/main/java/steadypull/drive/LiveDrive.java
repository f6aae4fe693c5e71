package steadypull.drive;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import steadypull.adapter.LinkState;
import steadypull.adapter.ReaderListener;
import steadypull.adapter.Reading;
import steadypull.adapter.VehicleReader;
import steadypull.adapter.capture.Capture;
import steadypull.adapter.diagnostic.ControlUnitIdentity;
import steadypull.adapter.diagnostic.FreezeFrame;
import steadypull.adapter.diagnostic.TroubleCodeReport;
import steadypull.channel.UnitSystem;
import steadypull.store.TripEvent;

/**
 * A drive in progress: the reader on the port's thread, everything else on one pipeline thread
 * behind a queue. A slow pipeline slows the polling, never a person; no reading is lost. Whatever
 * fails on either thread ends the drive with its trip sealed.
 */
final class LiveDrive implements RunningDrive {
  private static final int MOST_WAITING = 2048;
  private static final Duration PORT_PATIENCE = Duration.ofSeconds(5);

  /** A little more than the reader takes for the last trouble codes. */
  private static final Duration LAST_PATIENCE = Duration.ofSeconds(2);

  private final BlockingQueue<Arrival> arrivals = new LinkedBlockingQueue<>();

  /** What a person did goes before readings that wait: nobody presses "Got it" for later. */
  private final Queue<Arrival> calls = new ConcurrentLinkedQueue<>();

  private boolean isReleased;
  private final Semaphore room = new Semaphore(MOST_WAITING);
  private final CompletableFuture<DriveOutcome> outcome = new CompletableFuture<>();
  private final VehicleReader reader;
  private final Optional<ReceiverThread> receiver;
  private final Optional<Capture> capture;
  private final PipelineOutput observer;
  private final DriveLog log;
  private final Thread portThread;
  private final Thread pipelineThread;

  /** Prepares a drive; nothing is opened before {@link #start}. */
  LiveDrive(
      DriveRoute route, DriveLog.Keeping keeping, InstantSource wall, PipelineOutput observer) {
    long startNanos = route.source().clock().nanoTime();
    Instant start = wall.instant();
    log = new DriveLog(route, keeping, new TripClock(start, startNanos), observer);
    reader = new VehicleReader(route.source(), route.readerSettings(), new Intake());
    capture = route.capture();
    this.observer = observer;
    receiver =
        route
            .receiver()
            .map(
                source ->
                    new ReceiverThread(source, route.source().clock(), this::putWhenThereIsRoom));
    portThread = Thread.ofPlatform().name("port").unstarted(this::readPort);
    pipelineThread = Thread.ofPlatform().name("pipeline").unstarted(this::runPipeline);
  }

  void start() {
    pipelineThread.start();
    portThread.start();
    receiver.ifPresent(ReceiverThread::start);
  }

  @Override
  public CompletableFuture<DriveOutcome> outcome() {
    return outcome;
  }

  @Override
  public void mark() {
    call(new Arrival.Answered(TripEvent.Kind.MARK));
  }

  @Override
  public void acknowledge() {
    call(new Arrival.Answered(TripEvent.Kind.ACKNOWLEDGED));
  }

  @Override
  public void snooze() {
    call(new Arrival.Answered(TripEvent.Kind.SNOOZED));
  }

  @Override
  public void show() {
    call(new Arrival.Answered(TripEvent.Kind.RESUMED));
  }

  @Override
  public void speakIn(UnitSystem units) {
    call(new Arrival.UnitsChosen(units));
  }

  @Override
  public void close() {
    put(new Arrival.End());
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
        Arrival next = arrivals.poll(LAST_PATIENCE.toMillis(), TimeUnit.MILLISECONDS);
        if (next != null && needsRoom(next)) {
          room.release();
        }
        if (next instanceof Arrival.Diagnosed told) {
          log.takeLast(told);
        }
        isReading = next != null && !(next instanceof Arrival.PortEnded);
      }
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }

  private void takeAll() throws InterruptedException {
    boolean isGoing = true;
    while (isGoing) {
      Arrival next = arrivals.take();
      if (needsRoom(next)) {
        room.release();
      }
      takeCalls();
      isGoing = log.take(next);
    }
  }

  private static boolean needsRoom(Arrival arrival) {
    return switch (arrival) {
      case Arrival.Heard heard -> true;
      case Arrival.LinkChanged changed -> true;
      case Arrival.Located located -> true;
      case Arrival.ReceiverChanged changed -> true;
      case Arrival.Diagnosed told -> false;
      case Arrival.PortEnded ended -> false;
      case Arrival.Answered answered -> false;
      case Arrival.UnitsChosen chosen -> false;
      case Arrival.Called called -> false;
      case Arrival.Failed failed -> false;
      case Arrival.End end -> false;
    };
  }

  private void takeCalls() {
    for (Arrival call = calls.poll(); call != null; call = calls.poll()) {
      log.take(call);
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
      put(new Arrival.Failed(fault));
    } finally {
      put(new Arrival.PortEnded());
    }
  }

  /** Never waits. */
  private void call(Arrival arrival) {
    calls.add(arrival);
    put(new Arrival.Called());
  }

  /** Never waits. */
  private void put(Arrival arrival) {
    arrivals.add(arrival);
  }

  /** The reader waits while the pipeline is behind. */
  private void putWhenThereIsRoom(Arrival arrival) {
    try {
      room.acquire();
      put(arrival);
    } catch (InterruptedException ending) {
      Thread.currentThread().interrupt();
    }
  }

  private final class Intake implements ReaderListener {
    @Override
    public void reading(Reading reading) {
      putWhenThereIsRoom(new Arrival.Heard(reading));
    }

    @Override
    public void linkState(LinkState state, long nanoTime) {
      putWhenThereIsRoom(new Arrival.LinkChanged(state, nanoTime));
    }

    @Override
    public void troubleCodes(TroubleCodeReport report, long nanoTime) {
      DiagnosisText.of(report)
          .forEach(
              (status, detail) ->
                  put(
                      new Arrival.Diagnosed(
                          TripEvent.Kind.CODES, status.name(), detail, nanoTime)));
    }

    @Override
    public void freezeFrame(FreezeFrame frame, long nanoTime) {
      tell("frame of " + frame.controlUnit(), DiagnosisText.of(frame), nanoTime);
    }

    @Override
    public void identified(ControlUnitIdentity identity, long nanoTime) {
      tell("identity of " + identity.controlUnit(), DiagnosisText.of(identity), nanoTime);
    }

    private void tell(String subject, String detail, long nanoTime) {
      put(new Arrival.Diagnosed(TripEvent.Kind.VEHICLE, subject, detail, nanoTime));
    }
  }
}
