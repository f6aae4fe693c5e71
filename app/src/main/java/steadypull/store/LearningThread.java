package steadypull.store;

import org.jspecify.annotations.Nullable;

/**
 * Learns from trips that wait, beside everything else. A fault of the library leaves them waiting
 * for the next time. Any thread.
 */
final class LearningThread {
  private final String name;
  private final Learning learning;
  private @Nullable Thread running;
  private boolean isWanted;
  private boolean isClosed;

  LearningThread(String name, Learning learning) {
    this.name = name;
    this.learning = learning;
  }

  /** Begins to learn, or goes on until nothing waits any more. */
  synchronized void wake() {
    if (isClosed) {
      return;
    }
    isWanted = true;
    if (running == null) {
      running = Thread.ofPlatform().daemon().name(name).start(this::run);
    }
  }

  /** Waits until nobody learns any more. */
  synchronized void await() throws InterruptedException {
    while (running != null) {
      wait();
    }
  }

  /** Lets learning end at once; what it was at waits for the next time. */
  void close() {
    learning.stop();
    synchronized (this) {
      isClosed = true;
      isWanted = false;
    }
    try {
      await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    try {
      while (isStillWanted()) {
        learnAll();
      }
    } finally {
      ended();
    }
  }

  private void learnAll() {
    try {
      boolean isMore = true;
      while (isMore) {
        isMore = learning.next();
      }
    } catch (LibraryException e) {
      // The trips are safe; they still wait, and are learned when the library is opened again.
      return;
    }
  }

  private synchronized boolean isStillWanted() {
    boolean isStillWanted = isWanted;
    isWanted = false;
    if (!isStillWanted) {
      ended();
    }
    return isStillWanted;
  }

  /** Another thread may have been begun since this one had nothing to do any more. */
  private synchronized void ended() {
    if (Thread.currentThread().equals(running)) {
      running = null;
    }
    notifyAll();
  }
}
