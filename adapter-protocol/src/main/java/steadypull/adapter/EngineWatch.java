package steadypull.adapter;

import java.time.Duration;
import steadypull.adapter.diagnostic.ControlUnitIdentity;
import steadypull.adapter.diagnostic.FreezeFrame;
import steadypull.adapter.diagnostic.TroubleCodeReport;

/**
 * Listens in on the readings and tells when the engine has been standing for a while with the
 * ignition on. Readings and states are passed on unchanged. Reader thread only.
 */
final class EngineWatch implements ReaderListener {
  /**
   * An engine that stands longer is off. A stop at lights is shorter, and one that is taken for off
   * by mistake costs no more than the seconds until the supply is looked at again (common practice,
   * no source).
   */
  static final Duration OFF_AFTER = Duration.ofSeconds(60);

  private static final String ENGINE_SPEED = "01.0C";
  private static final String VEHICLE_SPEED = "01.0D";

  private final ReaderListener listener;
  private boolean turns;
  private boolean stands;
  private long standsSinceNanoTime;

  EngineWatch(ReaderListener listener) {
    this.listener = listener;
  }

  @Override
  public void reading(Reading reading) {
    switch (reading.signal().key()) {
      case ENGINE_SPEED -> {
        turns = reading.value() > 0;
        note(turns, reading.nanoTime());
      }
      // A hybrid may drive while its engine stands.
      case VEHICLE_SPEED -> note(turns || reading.value() > 0, reading.nanoTime());
      default -> {}
    }
    listener.reading(reading);
  }

  private void note(boolean isUnderWay, long nanoTime) {
    if (isUnderWay || !stands) {
      standsSinceNanoTime = nanoTime;
    }
    stands = !isUnderWay;
  }

  @Override
  public void linkState(LinkState state, long nanoTime) {
    listener.linkState(state, nanoTime);
  }

  @Override
  public void troubleCodes(TroubleCodeReport report, long nanoTime) {
    listener.troubleCodes(report, nanoTime);
  }

  @Override
  public void freezeFrame(FreezeFrame frame, long nanoTime) {
    listener.freezeFrame(frame, nanoTime);
  }

  @Override
  public void identified(ControlUnitIdentity identity, long nanoTime) {
    listener.identified(identity, nanoTime);
  }

  /** Whether the engine was turning when it was heard last. */
  boolean turns() {
    return turns;
  }

  /** Whether the engine has been standing long enough to be off. */
  boolean isOff(long nowNanoTime) {
    return stands && nowNanoTime - standsSinceNanoTime >= OFF_AFTER.toNanos();
  }

  /** Nothing heard so far counts any more. */
  void beginAnew() {
    turns = false;
    stands = false;
  }
}
