package steadypull.drive;

import steadypull.channel.UnitSystem;

/** What a person may do to a running drive. Callable from any thread; returns at once. */
public interface DriveControls {

  /** Puts a mark into the trip at the present moment. */
  void mark();

  /** Answers the advice line with "Got it". Without an open advisory nothing happens. */
  void acknowledge();

  /** Puts the advisory aside for a while, where its level allows it. */
  void snooze();

  /** Brings a snoozed advisory back. */
  void show();

  /** Says advice in these units from now on. */
  void speakIn(UnitSystem units);
}
