package steadypull.demo.bench;

import static java.lang.foreign.ValueLayout.ADDRESS;
import static java.lang.foreign.ValueLayout.JAVA_INT;
import static java.lang.foreign.ValueLayout.JAVA_LONG;
import static java.lang.foreign.ValueLayout.JAVA_SHORT;

import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.SymbolLookup;
import java.lang.invoke.MethodHandle;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;
import steadypull.adapter.link.LinkException;

/**
 * A pseudo terminal in raw mode from the system's C library: our end and the path of the other.
 * POSIX.1-2017 for read, write, poll, tcgetattr; openpty and cfmakeraw as in glibc, musl and macOS.
 */
final class TerminalPair implements AutoCloseable {
  private static final int SETTINGS_BYTES = 256; // more than any system's struct termios
  private static final int PATH_BYTES = 1024;
  private static final int AT_ONCE = 0; // TCSANOW
  private static final short READABLE = 1; // POLLIN
  private static final short WRITABLE = 4; // POLLOUT

  private final int ours;
  private final int theirs;
  private final String path;
  private final AtomicBoolean isOpen = new AtomicBoolean(true);

  private TerminalPair(int ours, int theirs, String path) {
    this.ours = ours;
    this.theirs = theirs;
    this.path = path;
  }

  /**
   * Opens a pair.
   *
   * @throws LinkException if this system gives none
   */
  static TerminalPair open(String address) throws LinkException {
    try (Arena arena = Arena.ofConfined()) {
      MemorySegment ours = arena.allocate(JAVA_INT);
      MemorySegment theirs = arena.allocate(JAVA_INT);
      MemorySegment name = arena.allocate(PATH_BYTES);
      MemorySegment none = MemorySegment.NULL;
      int result = Native.call(Native.OPENPTY, ours, theirs, name, none, none);
      if (result != 0) {
        throw refused(address, "the system gave no pseudo terminal", null);
      }
      int other = theirs.get(JAVA_INT, 0);
      makeRaw(other, arena);
      return new TerminalPair(ours.get(JAVA_INT, 0), other, name.getString(0));
    } catch (UnsupportedOperationException | LinkageError missing) {
      throw refused(address, "this system has no openpty", missing);
    }
  }

  private static void makeRaw(int terminal, Arena arena) {
    MemorySegment settings = arena.allocate(SETTINGS_BYTES);
    Native.call(Native.GET_SETTINGS, terminal, settings);
    Native.run(Native.MAKE_RAW, settings);
    Native.call(Native.SET_SETTINGS, terminal, AT_ONCE, settings);
  }

  private static LinkException refused(String address, String found, @Nullable Throwable cause) {
    return new LinkException(
        address, "open a pseudo terminal for", found, "Serve the bench over TCP instead.", cause);
  }

  String path() {
    return path;
  }

  /** Waits for bytes and reads them; 0 if none came in time or the pair is closed. */
  int read(MemorySegment buffer, int waitMillis) {
    if (!isReady(READABLE, waitMillis)) {
      return 0;
    }
    return (int) Math.max(0, Native.move(Native.READ, ours, buffer, buffer.byteSize()));
  }

  /** Writes bytes; like a serial line it loses them if nobody takes them. */
  void write(MemorySegment buffer, int count, int waitMillis) {
    if (isReady(WRITABLE, waitMillis)) {
      Native.move(Native.WRITE, ours, buffer, count);
    }
  }

  private boolean isReady(short event, int waitMillis) {
    if (!isOpen.get()) {
      return false;
    }
    try (Arena arena = Arena.ofConfined()) {
      MemorySegment request =
          arena.allocate(8, 4); // struct pollfd: int fd, short wanted, short found
      request.set(JAVA_INT, 0, ours);
      request.set(JAVA_SHORT, 4, event);
      return Native.poll(request, 1L, waitMillis) > 0 && (request.get(JAVA_SHORT, 6) & event) != 0;
    }
  }

  @Override
  public void close() {
    if (isOpen.getAndSet(false)) {
      Native.call(Native.CLOSE, theirs);
      Native.call(Native.CLOSE, ours);
    }
  }

  /** The functions of the C library that are needed. */
  @SuppressWarnings("restricted") // calling the C library is what this class is for
  private static final class Native {
    private static final Linker LINKER = Linker.nativeLinker();
    private static final SymbolLookup SYMBOLS = symbols();

    static final MethodHandle OPENPTY =
        of("openpty", FunctionDescriptor.of(JAVA_INT, ADDRESS, ADDRESS, ADDRESS, ADDRESS, ADDRESS));
    static final MethodHandle GET_SETTINGS =
        of("tcgetattr", FunctionDescriptor.of(JAVA_INT, JAVA_INT, ADDRESS));
    static final MethodHandle SET_SETTINGS =
        of("tcsetattr", FunctionDescriptor.of(JAVA_INT, JAVA_INT, JAVA_INT, ADDRESS));
    static final MethodHandle MAKE_RAW = of("cfmakeraw", FunctionDescriptor.ofVoid(ADDRESS));
    static final MethodHandle READ =
        of("read", FunctionDescriptor.of(JAVA_LONG, JAVA_INT, ADDRESS, JAVA_LONG));
    static final MethodHandle WRITE =
        of("write", FunctionDescriptor.of(JAVA_LONG, JAVA_INT, ADDRESS, JAVA_LONG));
    static final MethodHandle CLOSE = of("close", FunctionDescriptor.of(JAVA_INT, JAVA_INT));
    static final MethodHandle POLL =
        of("poll", FunctionDescriptor.of(JAVA_INT, ADDRESS, JAVA_LONG, JAVA_INT));

    private Native() {}

    /** Older C libraries keep openpty in a library of its own. */
    private static SymbolLookup symbols() {
      SymbolLookup usual = LINKER.defaultLookup();
      return usual.find("openpty").isPresent()
          ? usual
          : SymbolLookup.libraryLookup("libutil.so.1", Arena.global()).or(usual);
    }

    private static MethodHandle of(String name, FunctionDescriptor shape) {
      MemorySegment symbol =
          SYMBOLS
              .find(name)
              .orElseThrow(() -> new UnsupportedOperationException("no function " + name));
      return LINKER.downcallHandle(symbol, shape);
    }

    static int call(MethodHandle function, Object... arguments) {
      return (int) invoke(function, arguments);
    }

    static long move(MethodHandle function, int terminal, MemorySegment buffer, long count) {
      return (long) invoke(function, terminal, buffer, count);
    }

    static int poll(MemorySegment requests, long count, int waitMillis) {
      return (int) invoke(POLL, requests, count, waitMillis);
    }

    static void run(MethodHandle function, Object... arguments) {
      invoke(function, arguments);
    }

    private static Object invoke(MethodHandle function, Object... arguments) {
      try {
        return function.invokeWithArguments(arguments);
      } catch (RuntimeException | Error broken) {
        throw broken;
      } catch (Throwable impossible) {
        throw new IllegalStateException("A C function cannot throw", impossible);
      }
    }
  }
}
