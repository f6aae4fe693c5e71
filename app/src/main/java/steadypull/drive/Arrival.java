package steadypull.drive;

import steadypull.adapter.LinkState;
import steadypull.adapter.Reading;
import steadypull.adapter.position.PositionReport;
import steadypull.adapter.position.ReceiverState;
import steadypull.channel.UnitSystem;
import steadypull.store.TripEvent;
import steadypull.tablet.TabletNews;

/** What reaches the pipeline's thread from other threads. A closed set. */
sealed interface Arrival {
  record Heard(Reading reading) implements Arrival {}

  record LinkChanged(LinkState state, long nanoTime) implements Arrival {}

  /** The satellite receiver tells where the vehicle is, or that it does not know. */
  record Located(PositionReport report) implements Arrival {}

  record ReceiverChanged(ReceiverState state, long nanoTime) implements Arrival {}

  /**
   * A control unit told something about faults or about itself.
   *
   * @param kind of the event that keeps it
   * @param subject what it is about; what is told later about the same takes its place
   * @param detail of that event
   */
  record Diagnosed(TripEvent.Kind kind, String subject, String detail, long nanoTime)
      implements Arrival {}

  /** The tablet that records has news of itself. */
  record TabletTold(TabletNews news, long nanoTime) implements Arrival {}

  /** A person did something; it counts from the moment that the pipeline takes it. */
  record Answered(TripEvent.Kind kind) implements Arrival {}

  /** A person chose units. */
  record UnitsChosen(UnitSystem units) implements Arrival {}

  /** A person did or chose something that waits beside the queue. */
  record Called() implements Arrival {}

  /** The port's thread cannot go on. */
  record Failed(Throwable fault) implements Arrival {}

  /** The port's thread has come to its end: nothing more comes from it. */
  record PortEnded() implements Arrival {}

  record End() implements Arrival {}
}
