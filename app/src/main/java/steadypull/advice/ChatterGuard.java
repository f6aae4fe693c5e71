package steadypull.advice;

/**
 * Keeps one advisory from coming and going: what is raised again within a minute of its clearing
 * stays until a minute has passed without any reason for it. So nothing is raised a third time
 * within 60 s, which is the usual screen for chattering (ANSI/ISA-18.2-2016, from memory). One
 * thread.
 */
final class ChatterGuard {
  private static final long CALM_MICROS = 60_000_000;
  private static final long NEVER = Long.MIN_VALUE / 2;

  private long clearedMicros = NEVER;
  private long reasonMicros = NEVER;
  private boolean recurs;

  /** Is raised. */
  void raised(long timeMicros) {
    recurs = timeMicros - clearedMicros < CALM_MICROS;
    reasonMicros = timeMicros;
  }

  /** There is a reason for it at this moment. */
  void hasReason(long timeMicros) {
    reasonMicros = timeMicros;
  }

  /** Whether it must go on though nothing is a reason for it any more. */
  boolean isHeld(long timeMicros) {
    return recurs && timeMicros - reasonMicros < CALM_MICROS;
  }

  /** Is cleared. */
  void cleared(long timeMicros) {
    clearedMicros = timeMicros;
    recurs = false;
  }
}
