package steadypull.adapter;

/**
 * How far to go back after trouble: each time that the same remedy did not help, one rung further.
 * An adapter that is well is never reopened only because the vehicle sleeps. Reader thread only.
 */
final class ReconnectLadder {
  private static final int[] BACK_OFF_SECONDS = {1, 2, 5, 10};
  private static final int CONFUSIONS_BEFORE_REOPENING = 3;

  /** What to do before the next search for the vehicle. */
  enum Rung {
    SEARCH_AGAIN,
    CLOSE_PROTOCOL,
    WARM_START,
    FULL_RESET,
    REOPEN
  }

  private int quietTimes;
  private int confusedTimes;
  private int lostTimes;
  private boolean wasResetForFault;

  /** The vehicle answers: everything starts from the bottom again. */
  void connected() {
    quietTimes = 0;
    confusedTimes = 0;
    lostTimes = 0;
    wasResetForFault = false;
  }

  /** The engine was off for a while: what was tried before says nothing about what comes. */
  void rested() {
    connected();
  }

  /** Whether the adapter itself is to blame and has not been reset for it: worth one reset. */
  boolean resetsFirst(Trouble.VehicleQuiet quiet) {
    return quiet.cause() == SilenceCause.ADAPTER_FAULT && !wasResetForFault;
  }

  /** The rung for a trouble. */
  Rung next(Trouble trouble) {
    return switch (trouble) {
      case Trouble.VehicleQuiet quiet when resetsFirst(quiet) -> {
        wasResetForFault = true;
        yield Rung.FULL_RESET;
      }
      case Trouble.VehicleQuiet quiet ->
          quiet.cause() == SilenceCause.ADAPTER_FAULT
              ? Rung.SEARCH_AGAIN
              : afterQuiet(++quietTimes);
      case Trouble.EngineOff off -> Rung.SEARCH_AGAIN;
      case Trouble.AdapterRestarted restarted -> afterConfusion(++confusedTimes);
      case Trouble.AdapterConfused confused -> afterConfusion(++confusedTimes);
      case Trouble.AdapterMute mute -> Rung.REOPEN;
      case Trouble.Stopping stopping -> Rung.REOPEN;
    };
  }

  private static Rung afterQuiet(int times) {
    return switch (times) {
      case 1 -> Rung.SEARCH_AGAIN;
      case 3 -> Rung.WARM_START;
      case 4 -> Rung.FULL_RESET;
      default -> Rung.CLOSE_PROTOCOL;
    };
  }

  private static Rung afterConfusion(int times) {
    if (times >= CONFUSIONS_BEFORE_REOPENING) {
      return Rung.REOPEN;
    }
    return times == 1 ? Rung.WARM_START : Rung.FULL_RESET;
  }

  /** The link was lost once more; the seconds to wait before the next try. */
  int nextBackOffSeconds() {
    int seconds = BACK_OFF_SECONDS[Math.min(lostTimes, BACK_OFF_SECONDS.length - 1)];
    lostTimes++;
    confusedTimes = 0;
    return seconds;
  }
}
