package steadypull.drive;

import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import steadypull.channel.UnitSystem;
import steadypull.store.LibraryException;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;

/**
 * A kept trip driven once more, {@value #SPEED} times as fast as it was, on a thread of its own.
 * Nothing is recorded; the answers that were given then are given again, others come to nothing.
 */
final class PlayBack implements DriveSession {
  static final int SPEED = 10;

  private final TripLibrary library;
  private final TripSummary trip;
  private final Consumer<DriveSnapshot> onSnapshot;
  private final CountDownLatch left = new CountDownLatch(1);
  private final CountDownLatch ended = new CountDownLatch(1);
  private final AtomicReference<Optional<UnitSystem>> wantedUnits =
      new AtomicReference<>(Optional.empty());

  PlayBack(TripLibrary library, TripSummary trip, Consumer<DriveSnapshot> onSnapshot) {
    this.library = library;
    this.trip = trip;
    this.onSnapshot = onSnapshot;
  }

  void start(DriveSetup setup) {
    Thread.ofPlatform().name("play-back").daemon().start(() -> run(setup));
  }

  private void run(DriveSetup setup) {
    DrivePipeline pipeline = new DrivePipeline(setup, trip.start(), new Paced());
    try {
      library.replay(trip.id(), entry -> accept(pipeline, entry));
      pipeline.advanceTo(Math.round(trip.durationSeconds() * 1e6));
    } catch (LeftEarly asked) {
      // Somebody has seen enough: nothing is lost, for nothing is recorded.
      return;
    } catch (LibraryException unreadable) {
      // What could be read was shown up to here; the list of trips tells the damage in words.
      return;
    } finally {
      ended.countDown();
    }
  }

  private void accept(DrivePipeline pipeline, TripEntry entry) {
    wantedUnits.getAndSet(Optional.empty()).ifPresent(pipeline::speakIn);
    pipeline.accept(entry);
  }

  @Override
  public void mark() {}

  @Override
  public void acknowledge() {}

  @Override
  public void snooze() {}

  @Override
  public void show() {}

  @Override
  public void speakIn(UnitSystem units) {
    wantedUnits.set(Optional.of(units));
  }

  /** Waits until the library is no longer read. */
  @Override
  public void close() {
    left.countDown();
    try {
      ended.await();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  /** Hands a second out when its time has come. */
  private final class Paced implements PipelineOutput {
    private final long startNanos = System.nanoTime();

    @Override
    public void second(DriveSnapshot snapshot) {
      long dueNanos = startNanos + snapshot.timeMicros() * 1000 / SPEED;
      if (isLeftBefore(dueNanos - System.nanoTime())) {
        throw new LeftEarly();
      }
      onSnapshot.accept(snapshot);
    }

    @Override
    public void answered(DriveSnapshot snapshot) {
      onSnapshot.accept(snapshot);
    }

    private boolean isLeftBefore(long nanos) {
      try {
        return left.await(nanos, TimeUnit.NANOSECONDS);
      } catch (InterruptedException interrupted) {
        Thread.currentThread().interrupt();
        return true;
      }
    }
  }

  /** Ends the reading of the trip. */
  private static final class LeftEarly extends RuntimeException {
    private static final long serialVersionUID = 1;
  }
}
