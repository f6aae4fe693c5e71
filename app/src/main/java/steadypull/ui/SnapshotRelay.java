package steadypull.ui;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import javafx.animation.PauseTransition;
import javafx.util.Duration;
import org.jspecify.annotations.Nullable;
import steadypull.drive.DriveSnapshot;

/**
 * Moves snapshots from the pipeline's thread to the FX thread. The newest wins; values change at
 * most twice a second, a change of the advice line shows at once.
 */
final class SnapshotRelay implements Consumer<DriveSnapshot> {
  private static final long SLOWEST_NANOS = 500_000_000L;

  private final AtomicReference<@Nullable DriveSnapshot> newest = new AtomicReference<>();
  private final Consumer<DriveSnapshot> screen;
  private final LongSupplier nanoTime;
  private final PauseTransition later = new PauseTransition();
  private Optional<DriveSnapshot> shown = Optional.empty();
  private Optional<DriveSnapshot> held = Optional.empty();
  private long shownNanos;

  /**
   * A relay.
   *
   * @param screen takes the snapshots, on the FX thread
   * @param nanoTime a clock that does not run backwards, asked on the FX thread
   */
  SnapshotRelay(Consumer<DriveSnapshot> screen, LongSupplier nanoTime) {
    this.screen = screen;
    this.nanoTime = nanoTime;
    later.setOnFinished(_ -> deliver());
  }

  /** Takes a snapshot. Any thread; returns at once. */
  @Override
  public void accept(DriveSnapshot snapshot) {
    if (newest.getAndSet(snapshot) == null) {
      FxThread.later(this::arrive);
    }
  }

  private void arrive() {
    DriveSnapshot snapshot = newest.get();
    if (snapshot == null) {
      return;
    }
    long waited = nanoTime.getAsLong() - shownNanos;
    if (isUrgent(snapshot) || waited >= SLOWEST_NANOS) {
      deliver();
    } else {
      later.setDuration(Duration.millis((SLOWEST_NANOS - waited) / 1e6));
      later.playFromStart();
      urgentMayFollow();
    }
  }

  /** While one waits, a newer one must still be able to come through at once. */
  private void urgentMayFollow() {
    DriveSnapshot waiting = newest.getAndSet(null);
    held = Optional.ofNullable(waiting);
  }

  private void deliver() {
    later.stop();
    Optional<DriveSnapshot> next = Optional.ofNullable(newest.getAndSet(null)).or(() -> held);
    held = Optional.empty();
    next.ifPresent(this::show);
  }

  private void show(DriveSnapshot snapshot) {
    shown = Optional.of(snapshot);
    shownNanos = nanoTime.getAsLong();
    screen.accept(snapshot);
  }

  private boolean isUrgent(DriveSnapshot snapshot) {
    return shown
        .filter(
            before ->
                before.advice().state() == snapshot.advice().state()
                    && before.advice().action().equals(snapshot.advice().action())
                    && before.advice().response().equals(snapshot.advice().response()))
        .isEmpty();
  }
}
