package steadypull.store;

import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/** Reads for somebody who must not wait; its thread is there while there is something to read. */
final class ReadingThread {
  private static final long IDLE_SECONDS = 5;

  private final ThreadPoolExecutor executor =
      new ThreadPoolExecutor(
          0,
          1,
          IDLE_SECONDS,
          TimeUnit.SECONDS,
          new LinkedBlockingQueue<>(),
          Thread.ofPlatform().daemon().name("reading").factory(),
          new ThreadPoolExecutor.DiscardPolicy());

  /** Something to read. */
  @FunctionalInterface
  interface Work {
    void read() throws LibraryException;
  }

  /** Reads soon; not at all after {@link #close}, or if the library refuses. */
  void read(Work work) {
    executor.execute(
        () -> {
          try {
            work.read();
          } catch (LibraryException e) {
            // Whoever asked goes on without; the next place is asked for anew.
            return;
          }
        });
  }

  /** Waits for what is being read. */
  void close() {
    executor.close();
  }
}
