package steadypull.adapter.link;

import java.io.IOException;
import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.ValueLayout;
import java.lang.invoke.MethodHandle;
import java.nio.charset.StandardCharsets;

/**
 * A pseudo terminal of this machine, opened through the C library (IEEE Std 1003.1: posix_openpt,
 * grantpt, unlockpt, ptsname), so that tests meet a real serial device without one being plugged
 * in.
 */
@SuppressWarnings("restricted") // Calling the C library is this class's purpose.
final class PseudoTerminalPair implements AutoCloseable {
  private static final int READ_WRITE_WITHOUT_CONTROL = 2 | 0x100; // O_RDWR | O_NOCTTY on Linux
  private static final int RATE_BITS = 0x100F; // CBAUD on Linux, octal 010017
  private static final int CONTROL_FLAGS = 2; // c_cflag is the third int of struct termios
  private static final Linker LINKER = Linker.nativeLinker();

  private final int descriptor;
  private final String path;
  private boolean isOpen = true;

  private PseudoTerminalPair(int descriptor, String path) {
    this.descriptor = descriptor;
    this.path = path;
  }

  static PseudoTerminalPair open() throws IOException {
    int descriptor = call("posix_openpt", READ_WRITE_WITHOUT_CONTROL);
    if (descriptor < 0 || call("grantpt", descriptor) != 0 || call("unlockpt", descriptor) != 0) {
      throw new IOException("No pseudo terminal on this machine");
    }
    return new PseudoTerminalPair(descriptor, nameOf(descriptor));
  }

  /** The device to open as a serial port. */
  String path() {
    return path;
  }

  void write(String text) throws IOException {
    try (Arena arena = Arena.ofConfined()) {
      MemorySegment bytes = arena.allocateFrom(text, StandardCharsets.US_ASCII);
      transfer("write", bytes, text.length());
    }
  }

  String read(int count) throws IOException {
    try (Arena arena = Arena.ofConfined()) {
      MemorySegment bytes = arena.allocate(count);
      int got = 0;
      while (got < count) {
        got += (int) transfer("read", bytes.asSlice(got), count - got);
      }
      return new String(bytes.toArray(ValueLayout.JAVA_BYTE), StandardCharsets.US_ASCII);
    }
  }

  /** The rate code that the device is set to while a source has it open. */
  long baudRateWhile(LinkSource source) throws IOException {
    try (Link link = source.open();
        Arena arena = Arena.ofConfined()) {
      MemorySegment settings = arena.allocate(64, 4);
      MethodHandle function =
          function(
              "tcgetattr",
              FunctionDescriptor.of(
                  ValueLayout.JAVA_INT, ValueLayout.JAVA_INT, ValueLayout.ADDRESS));
      if ((int) invoke(function, descriptor, settings) != 0) {
        throw new IOException("No settings of " + link.address());
      }
      return settings.getAtIndex(ValueLayout.JAVA_INT, CONTROL_FLAGS) & RATE_BITS;
    }
  }

  @Override
  public void close() throws IOException {
    hangUp();
  }

  /** What an unplugged device looks like to the one who has it open. */
  void hangUp() throws IOException {
    if (isOpen) {
      isOpen = false;
      call("close", descriptor);
    }
  }

  private static String nameOf(int descriptor) throws IOException {
    MethodHandle function =
        function("ptsname", FunctionDescriptor.of(ValueLayout.ADDRESS, ValueLayout.JAVA_INT));
    return ((MemorySegment) invoke(function, descriptor)).reinterpret(256).getString(0);
  }

  private long transfer(String name, MemorySegment bytes, long count) throws IOException {
    MethodHandle function =
        function(
            name,
            FunctionDescriptor.of(
                ValueLayout.JAVA_LONG,
                ValueLayout.JAVA_INT,
                ValueLayout.ADDRESS,
                ValueLayout.JAVA_LONG));
    long moved = (long) invoke(function, descriptor, bytes, count);
    if (moved <= 0) {
      throw new IOException(name + " on " + path + " moved " + moved + " bytes");
    }
    return moved;
  }

  private static int call(String name, int argument) throws IOException {
    FunctionDescriptor shape = FunctionDescriptor.of(ValueLayout.JAVA_INT, ValueLayout.JAVA_INT);
    return (int) invoke(function(name, shape), argument);
  }

  private static MethodHandle function(String name, FunctionDescriptor shape) {
    return LINKER.downcallHandle(LINKER.defaultLookup().find(name).orElseThrow(), shape);
  }

  private static Object invoke(MethodHandle function, Object... arguments) throws IOException {
    try {
      return function.invokeWithArguments(arguments);
    } catch (Throwable e) {
      throw new IOException("The C library refused", e);
    }
  }
}
