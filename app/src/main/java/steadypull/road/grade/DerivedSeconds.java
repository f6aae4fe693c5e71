package steadypull.road.grade;

import java.util.ArrayList;
import java.util.List;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.Vehicle;

/**
 * The derived samples of a finished trip, as they would have come while it was driven: at every
 * whole second, before the first measured sample at or after it. One thread.
 */
public final class DerivedSeconds {
  private static final long SECOND_MICROS = 1_000_000;

  private final DerivedChannels derived;
  private long nextMicros = SECOND_MICROS;

  /** Computes for the vehicle of the trip. */
  public DerivedSeconds(Vehicle vehicle) {
    this.derived = new DerivedChannels(vehicle);
  }

  /**
   * What is to be told before a sample, which is then taken; a derived one is passed over.
   *
   * @param sample not earlier than the one before, but for moments
   */
  public List<Sample> before(Sample sample) {
    List<Sample> told = until(sample.timeMicros());
    if (!Channels.derived().contains(sample.channel())) {
      derived.accept(sample);
    }
    return told;
  }

  /**
   * What is to be told up to a moment.
   *
   * @param timeMicros microseconds since trip start
   */
  public List<Sample> until(long timeMicros) {
    if (nextMicros > timeMicros) {
      return List.of();
    }
    List<Sample> told = new ArrayList<>();
    for (; nextMicros <= timeMicros; nextMicros += SECOND_MICROS) {
      told.addAll(derived.tick(nextMicros));
    }
    return told;
  }
}
