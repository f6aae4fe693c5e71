package steadypull.cli;

import java.io.Console;
import java.io.PrintWriter;
import java.util.Optional;
import steadypull.exchange.TransferWatch;

/**
 * Shows on a terminal how far a long transfer has come, and ends it when somebody asks. The
 * transfer's thread, but for {@link #stop}.
 */
final class TransferProgress {
  private static final long NANOS_BETWEEN = 500_000_000L;

  private final PrintWriter terminal;
  private final boolean isShown;
  private volatile boolean isStopped;
  private long lastNanos = System.nanoTime();
  private int lastLength;

  /**
   * A progress that nobody sees unless there is a terminal.
   *
   * @param terminal takes the line, which is written over and over
   */
  TransferProgress(PrintWriter terminal) {
    this(terminal, Optional.ofNullable(System.console()).filter(Console::isTerminal).isPresent());
  }

  TransferProgress(PrintWriter terminal, boolean isShown) {
    this.terminal = terminal;
    this.isShown = isShown;
  }

  /** Asks the transfer to end; any thread. */
  void stop() {
    isStopped = true;
  }

  /**
   * Watches one transfer.
   *
   * @param words what is done, such as {@code Reading a.csv}
   * @param total when it is complete, more than 0
   */
  TransferWatch watch(String words, long total) {
    return done -> {
      if (isShown && System.nanoTime() - lastNanos >= NANOS_BETWEEN) {
        lastNanos = System.nanoTime();
        show("%s: %d %%".formatted(words, Math.min(100, done * 100 / total)));
      }
      return !isStopped;
    };
  }

  /** Wipes the line away. */
  void finish() {
    if (lastLength > 0) {
      show("");
      terminal.print("\r");
      terminal.flush();
    }
  }

  private void show(String line) {
    terminal.print("\r" + line + " ".repeat(Math.max(0, lastLength - line.length())));
    terminal.flush();
    lastLength = line.length();
  }
}
