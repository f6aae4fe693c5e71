package steadypull.store.column;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;

/**
 * Work that some core has to do: whoever comes first does it, a thread of the pool or the one that
 * needs the result. Any thread.
 */
final class Unpacking<T> implements Runnable {
  private final Supplier<T> work;
  private final AtomicBoolean isTaken = new AtomicBoolean();
  private final CompletableFuture<T> done = new CompletableFuture<>();

  Unpacking(Supplier<T> work) {
    this.work = work;
  }

  @Override
  public void run() {
    if (isTaken.compareAndSet(false, true)) {
      done.completeAsync(work, Runnable::run);
    }
  }

  /** Whether the result is there. */
  boolean isDone() {
    return done.isDone();
  }

  /** Has no thread of the pool begin it any more. */
  void leave() {
    isTaken.set(true);
  }

  /** The result, for which nobody waits who could work for it. */
  T result() {
    run();
    return done.join();
  }
}
