package steadypull.store;

import java.util.Objects;
import steadypull.channel.Sample;

/** One entry of a trip, in the order in which it was accepted. Immutable. */
public sealed interface TripEntry {
  /** Microseconds since the start of the trip. */
  long timeMicros();

  /** A measured or derived value. */
  record OfSample(Sample sample) implements TripEntry {
    public OfSample {
      Objects.requireNonNull(sample);
    }

    @Override
    public long timeMicros() {
      return sample.timeMicros();
    }
  }

  /** Something else that happened. */
  record OfEvent(TripEvent event) implements TripEntry {
    public OfEvent {
      Objects.requireNonNull(event);
    }

    @Override
    public long timeMicros() {
      return event.timeMicros();
    }
  }
}
