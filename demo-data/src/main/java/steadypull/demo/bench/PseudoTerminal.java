package steadypull.demo.bench;

import java.lang.foreign.Arena;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.ValueLayout;
import java.util.Arrays;
import steadypull.adapter.link.LinkException;

/**
 * Serves a bench over a pseudo terminal, which programs open like any serial port, on the machine's
 * time times the bench's speed. Linux and macOS. Closing is safe from any thread.
 */
public final class PseudoTerminal implements AutoCloseable {
  private static final int CHUNK = 512;
  private static final int POLL_MILLIS = 50;

  private final TerminalPair pair;
  private final BenchPump pump;
  private final Thread hearing;
  private final Thread talking;
  private volatile boolean isOpen = true;
  private volatile boolean isSilent;

  private PseudoTerminal(TerminalPair pair, BenchPump pump) {
    this.pair = pair;
    this.pump = pump;
    hearing = Thread.ofPlatform().daemon().name("bench-terminal-hear").unstarted(this::hear);
    talking = Thread.ofPlatform().daemon().name("bench-terminal-talk").unstarted(this::talk);
  }

  /**
   * Opens a pseudo terminal and begins to serve.
   *
   * @param address a bench, such as {@code demo:cool-day?speed=20}
   * @throws LinkException if the address is malformed or the system gives no pseudo terminal
   */
  public static PseudoTerminal serve(String address) throws LinkException {
    BenchSettings settings = BenchAddress.parse(address);
    PseudoTerminal terminal =
        new PseudoTerminal(TerminalPair.open(address), new BenchPump(settings));
    terminal.hearing.start();
    terminal.talking.start();
    return terminal;
  }

  /** The device that a program opens, such as {@code /dev/pts/3}. */
  public String path() {
    return pair.path();
  }

  /**
   * Breaks both lines between the adapter and the device, or mends them; what is sent meanwhile is
   * lost. For whoever cannot say beforehand when it is to happen. Any thread.
   */
  public void setSilent(boolean silent) {
    isSilent = silent;
  }

  @Override
  public void close() {
    isOpen = false;
    hearing.interrupt();
    talking.interrupt();
    try {
      hearing.join(1000);
      talking.join(1000);
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
    pair.close();
  }

  private void hear() {
    try (Arena arena = Arena.ofConfined()) {
      MemorySegment buffer = arena.allocate(CHUNK);
      while (isOpen && pump.isPresent()) {
        int count = pair.read(buffer, POLL_MILLIS);
        pump.hear(buffer.toArray(ValueLayout.JAVA_BYTE), isSilent ? 0 : Math.max(0, count));
      }
    }
    if (isOpen) {
      vanish();
    }
  }

  /** Takes the device away once nobody of ours uses it any more. */
  private void vanish() {
    try {
      talking.join();
      pair.close();
    } catch (InterruptedException closed) {
      Thread.currentThread().interrupt();
    }
  }

  private void talk() {
    try (Arena arena = Arena.ofConfined()) {
      MemorySegment buffer = arena.allocate(CHUNK);
      while (isOpen && pump.isPresent()) {
        byte[] due = pump.awaitDue();
        if (!isSilent) {
          send(due, buffer);
        }
      }
    } catch (InterruptedException closed) {
      Thread.currentThread().interrupt();
    }
  }

  private void send(byte[] bytes, MemorySegment buffer) {
    for (int from = 0; from < bytes.length; from += CHUNK) {
      byte[] part = Arrays.copyOfRange(bytes, from, Math.min(bytes.length, from + CHUNK));
      MemorySegment.copy(part, 0, buffer, ValueLayout.JAVA_BYTE, 0, part.length);
      pair.write(buffer, part.length, POLL_MILLIS);
    }
  }
}
