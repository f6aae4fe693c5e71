package steadypull.tablet;

import java.util.Optional;

/**
 * Keeps a Windows machine awake: a thread says what it needs, and the system forgets it when that
 * thread or its program ends (SetThreadExecutionState, Microsoft's reference, from memory).
 *
 * @param need says what the calling thread needs; empty on a system that cannot be told
 */
record WindowsAwake(Optional<Need> need) implements Tablet.AwakeKeeper {
  /** ES_CONTINUOUS: until the thread says otherwise. */
  static final int CONTINUOUS = 0x8000_0000;

  /** ES_SYSTEM_REQUIRED and ES_DISPLAY_REQUIRED: neither machine nor screen may go off. */
  static final int SYSTEM_AND_DISPLAY = 0x0000_0003;

  /** Tells the system what the calling thread needs. */
  @FunctionalInterface
  interface Need {
    /** Says it; false if that failed. */
    boolean say(int needs);
  }

  static WindowsAwake here() {
    return new WindowsAwake(Kernel32.find().map(found -> found::setThreadExecutionState));
  }

  @Override
  public Awake begin() {
    if (need.isEmpty() || !need.get().say(CONTINUOUS | SYSTEM_AND_DISPLAY)) {
      return new Awake.NotHeld("SetThreadExecutionState failed");
    }
    return new Awake.Held(() -> true, () -> need.get().say(CONTINUOUS));
  }
}
