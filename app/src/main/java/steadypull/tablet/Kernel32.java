package steadypull.tablet;

import static java.lang.foreign.ValueLayout.ADDRESS;
import static java.lang.foreign.ValueLayout.JAVA_BYTE;
import static java.lang.foreign.ValueLayout.JAVA_INT;

import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.SymbolLookup;
import java.lang.invoke.MethodHandle;
import java.util.NoSuchElementException;
import java.util.Optional;

/**
 * The two calls of the Windows system that a recording needs, as Microsoft's reference documents
 * them (winbase.h). Written from memory of that reference; not tried on such a machine.
 */
@SuppressWarnings("restricted") // The launcher grants native access; elsewhere it is not reached.
final class Kernel32 {
  /** Bytes of SYSTEM_POWER_STATUS: four of one byte, two of four. */
  static final int POWER_STATUS_BYTES = 12;

  private final MethodHandle setThreadExecutionState;
  private final MethodHandle getSystemPowerStatus;

  private Kernel32(SymbolLookup library) {
    setThreadExecutionState =
        call(library, "SetThreadExecutionState", FunctionDescriptor.of(JAVA_INT, JAVA_INT));
    getSystemPowerStatus =
        call(library, "GetSystemPowerStatus", FunctionDescriptor.of(JAVA_INT, ADDRESS));
  }

  private static MethodHandle call(SymbolLookup library, String name, FunctionDescriptor shape) {
    return Linker.nativeLinker().downcallHandle(library.findOrThrow(name), shape);
  }

  /** The library; empty on a system that has none. */
  static Optional<Kernel32> find() {
    try {
      return Optional.of(new Kernel32(SymbolLookup.libraryLookup("kernel32", Arena.global())));
    } catch (IllegalArgumentException | NoSuchElementException | IllegalCallerException absent) {
      return Optional.empty();
    }
  }

  /**
   * Says what the calling thread needs, until it says otherwise or ends.
   *
   * @return false if the call failed
   */
  boolean setThreadExecutionState(int needs) {
    try {
      // What it needed before; 0 is none of these, but a failure.
      return (int) setThreadExecutionState.invokeExact(needs) != 0;
    } catch (Throwable refused) {
      // Safe to go on: the caller tells the user.
      return false;
    }
  }

  /** The bytes of SYSTEM_POWER_STATUS, in their order; empty if the call failed. */
  Optional<byte[]> systemPowerStatus() {
    try (Arena arena = Arena.ofConfined()) {
      MemorySegment status = arena.allocate(POWER_STATUS_BYTES, Integer.BYTES);
      int isTold = (int) getSystemPowerStatus.invokeExact(status);
      return isTold == 0 ? Optional.empty() : Optional.of(status.toArray(JAVA_BYTE));
    } catch (Throwable refused) {
      // Safe to go on: the battery is then not known.
      return Optional.empty();
    }
  }
}
