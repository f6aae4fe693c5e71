package steadypull.drive;

import java.time.Duration;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/** Tells when an engine that is off has ended the trip. Pipeline thread only. */
final class EngineOffWait {
  /**
   * A trip ends when the engine has been off for so long: longer than a stop to look at the load or
   * to pay, shorter than one that lets things cool down enough to make another trip of it (common
   * practice, no source).
   */
  static final Duration ENDS_TRIP_AFTER = Duration.ofMinutes(3);

  private static final long ENDS_TRIP_AFTER_MICROS = ENDS_TRIP_AFTER.toNanos() / 1000;

  private boolean tellsEngineSpeed;
  private long lastRunningMicros;

  /** Takes what was heard; a vehicle that does not tell its engine speed runs while it is heard. */
  void heard(Sample sample) {
    boolean isEngineSpeed = sample.channel().equals(Channels.ENGINE_SPEED);
    tellsEngineSpeed |= isEngineSpeed;
    boolean isMovement = isEngineSpeed || sample.channel().equals(Channels.VEHICLE_SPEED);
    if (isMovement ? sample.value() > 0 : !tellsEngineSpeed) {
      lastRunningMicros = Math.max(lastRunningMicros, sample.timeMicros());
    }
  }

  /**
   * Whether the trip is over. A link that is lost, or a vehicle that is silent while its engine may
   * run, never ends a trip.
   *
   * @param state where the link stands
   * @param nowMicros microseconds since trip start
   */
  boolean endsTrip(LinkSummary.State state, long nowMicros) {
    return state == LinkSummary.State.ENGINE_OFF
        && nowMicros - lastRunningMicros >= ENDS_TRIP_AFTER_MICROS;
  }
}
