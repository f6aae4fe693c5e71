package steadypull.drive;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import steadypull.adapter.Reading;
import steadypull.channel.Channel;
import steadypull.channel.Sample;

/**
 * Turns readings into samples: the best source of each channel wins, and of several control units
 * that answer the same signal the one with the lowest address, so that a gearbox never overwrites
 * the engine. One thread.
 */
final class ReadingIntake {
  private record Source(int rank, String controlUnit) implements Comparable<Source> {
    @Override
    public int compareTo(Source other) {
      return rank != other.rank
          ? Integer.compare(rank, other.rank)
          : controlUnit.compareTo(other.controlUnit);
    }
  }

  private record Heard(Source source, long nanoTime) {}

  /** A source that has been silent for so long is given up for the next best. */
  private static final long GIVEN_UP_NANOS = 30_000_000_000L;

  private final SensorRoles roles;
  private final Map<Channel, Heard> chosen = new HashMap<>();

  ReadingIntake(SensorRoles roles) {
    this.roles = roles;
  }

  /**
   * The samples that a reading gives: usually one; none if a better source is being heard.
   *
   * @param clock tells when in the trip it was heard
   */
  List<Sample> samples(Reading reading, TripClock clock) {
    List<Sample> samples = new ArrayList<>(1);
    for (Channel channel : roles.channelsOf(reading.signal().key())) {
      Source source =
          new Source(roles.rank(channel, reading.signal().key()), reading.controlUnit());
      if (wins(channel, source, reading.nanoTime())) {
        chosen.put(channel, new Heard(source, reading.nanoTime()));
        samples.add(new Sample(channel, clock.micros(reading.nanoTime()), value(reading)));
      }
    }
    return samples;
  }

  private double value(Reading reading) {
    return roles.inChannelUnit(reading.signal().key(), reading.value());
  }

  private boolean wins(Channel channel, Source source, long nanoTime) {
    Heard heard = chosen.get(channel);
    return heard == null
        || source.compareTo(heard.source()) <= 0
        || nanoTime - heard.nanoTime() > GIVEN_UP_NANOS;
  }
}
