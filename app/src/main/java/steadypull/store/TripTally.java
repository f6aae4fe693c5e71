package steadypull.store;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/**
 * Counts along what a summary says, so that nobody need read a trip to list it. One thread.
 *
 * <p>Gaps are the vehicle's: positions come from a receiver of their own, and what the program
 * computes goes on for some seconds without anything new to compute it from. Distance is the
 * integral of vehicle speed by trapezoids; where speed is silent for longer than a gap, nothing is
 * added, because nobody can tell.
 */
final class TripTally {
  static final long GAP_MICROS = (long) (TripSummary.GAP_SECONDS * 1e6);

  private static final double METRES_PER_KM_H_AND_MICRO = 1e-6 / 3.6;

  private final Set<Channel> channels = new LinkedHashSet<>();
  private final Silences vehicle = new Silences();
  private final Silences receiver = new Silences();
  private final Silences program = new Silences();
  private long sampleCount;
  private long reachedMicros;
  private double distanceMetres;
  private boolean hasSpeed;
  private long speedMicros;
  private double speed;

  void add(TripEntry entry) {
    reach(entry.timeMicros());
    if (entry instanceof TripEntry.OfSample(Sample sample)) {
      add(sample);
    }
  }

  void reach(long timeMicros) {
    reachedMicros = Math.max(reachedMicros, timeMicros);
  }

  private void add(Sample sample) {
    channels.add(sample.channel());
    sampleCount++;
    speaker(sample.channel()).end(sample.timeMicros());
    if (sample.channel().equals(Channels.VEHICLE_SPEED)) {
      addSpeed(sample);
    }
  }

  private Silences speaker(Channel channel) {
    if (Channels.located().contains(channel)) {
      return receiver;
    }
    return Channels.derived().contains(channel) ? program : vehicle;
  }

  private void addSpeed(Sample sample) {
    long passed = sample.timeMicros() - speedMicros;
    if (hasSpeed && passed > 0 && passed <= GAP_MICROS) {
      distanceMetres += (speed + sample.value()) / 2 * passed * METRES_PER_KM_H_AND_MICRO;
    }
    hasSpeed = true;
    speed = sample.value();
    speedMicros = sample.timeMicros();
  }

  List<Channel> channels() {
    return List.copyOf(channels);
  }

  List<GapMicros> gaps() {
    return List.copyOf(heard().gaps);
  }

  long sampleCount() {
    return sampleCount;
  }

  long lastSampleMicros() {
    return heard().lastMicros;
  }

  long reachedMicros() {
    return reachedMicros;
  }

  OptionalDouble distanceMetres() {
    return hasSpeed ? OptionalDouble.of(distanceMetres) : OptionalDouble.empty();
  }

  /** A receiver or a computation that goes on does not hide that the vehicle is silent. */
  private Silences heard() {
    return Stream.of(vehicle, receiver).filter(each -> each.hasEnded).findFirst().orElse(program);
  }

  /** The long silences of one speaker. */
  private static final class Silences {
    private final List<GapMicros> gaps = new ArrayList<>();
    private long lastMicros;
    private boolean hasEnded;

    void end(long timeMicros) {
      if (timeMicros - lastMicros > GAP_MICROS) {
        gaps.add(new GapMicros(lastMicros, timeMicros));
      }
      lastMicros = Math.max(lastMicros, timeMicros);
      hasEnded = true;
    }
  }

  record GapMicros(long fromMicros, long toMicros) {}
}
