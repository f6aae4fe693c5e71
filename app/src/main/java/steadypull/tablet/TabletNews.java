package steadypull.tablet;

import java.time.Duration;
import java.time.Instant;

/** Something that somebody who records should know of the tablet. A closed set of values. */
public sealed interface TabletNews {

  /**
   * The charger is not connected.
   *
   * @param percent how full the battery is
   */
  record OnBattery(int percent) implements TabletNews {}

  /**
   * The battery is low and getting emptier.
   *
   * @param underPercent the mark that it has fallen under: 20, 15 or 10
   * @param percent how full it is
   */
  record BatteryUnder(int underPercent, int percent) implements TabletNews {}

  /**
   * The tablet may go off any minute.
   *
   * @param percent how full the battery is
   */
  record BatteryNearlyEmpty(int percent) implements TabletNews {}

  /**
   * The battery is no longer getting emptier.
   *
   * @param percent how full it is
   */
  record Charging(int percent) implements TabletNews {}

  /**
   * Nothing keeps the tablet awake.
   *
   * @param reason what the system said
   */
  record MayFallAsleep(String reason) implements TabletNews {}

  /**
   * The wall's clock no longer says what it should.
   *
   * @param from what it would say now
   * @param to what it says now
   * @param mayHaveSlept whether a sleep looks the same on this machine
   */
  record ClockSet(Instant from, Instant to, boolean mayHaveSlept) implements TabletNews {
    /** How far it was set; negative means back. */
    public Duration by() {
      return Duration.between(from, to);
    }
  }

  /**
   * The tablet slept, or was too busy to do anything.
   *
   * @param length for how long
   * @param monotonicStood whether the monotonic clock stood still meanwhile
   */
  record Slept(Duration length, boolean monotonicStood) implements TabletNews {}
}
