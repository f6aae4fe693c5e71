package steadypull.review;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.LatestSamples;
import steadypull.road.RoadPass;
import steadypull.road.grade.DerivedChannels;
import steadypull.road.grade.PassTrace;
import steadypull.thermal.Derate;
import steadypull.thermal.DerateDetector;
import steadypull.vehicle.Vehicle;

/**
 * Looks at a trip once, sample by sample, and keeps what its climbs will be asked for: the road,
 * temperatures, power at the wheels and when torque was cut. One thread.
 */
final class DriveTrace {
  private static final long SECOND_MICROS = 1_000_000;
  private static final double FRESH_SECONDS = 5;

  private final PassTrace road;
  private final DerivedChannels derived;
  private final DerateDetector derates;
  private final LatestSamples torque = new LatestSamples();
  private final List<Sample> temperatures = new ArrayList<>();
  private final List<Sample> pressures = new ArrayList<>();
  private final List<Sample> powers = new ArrayList<>();
  private final List<Long> torqueTold = new ArrayList<>();
  private final List<Long> derated = new ArrayList<>();
  private long nextMicros = SECOND_MICROS;

  /** Looks at a trip of one vehicle. */
  DriveTrace(Vehicle vehicle) {
    road = new PassTrace(vehicle);
    derived = new DerivedChannels(vehicle);
    derates = new DerateDetector(vehicle);
  }

  /** Takes a sample; times do not run backwards. Derived ones are computed anew. */
  void accept(Sample sample) {
    while (nextMicros <= sample.timeMicros()) {
      tick();
    }
    if (Channels.derived().contains(sample.channel())) {
      return;
    }
    road.accept(sample);
    derived.accept(sample);
    derates.accept(sample);
    if (Channels.thermal().contains(sample.channel())) {
      temperatures.add(sample);
    } else if (sample.channel().equals(Channels.BAROMETRIC_PRESSURE)) {
      pressures.add(sample);
    } else if (isTorque(sample.channel())) {
      torque.accept(sample);
    }
  }

  /** Comes to the end of the trip, and tells the roads that were driven. */
  List<RoadPass> finish() {
    tick();
    return road.finish();
  }

  private void tick() {
    derived.tick(nextMicros).stream()
        .filter(sample -> sample.channel().equals(Channels.WHEEL_POWER))
        .forEach(powers::add);
    if (derates.tick(nextMicros) instanceof Derate.Active) {
      derated.add(nextMicros);
    }
    if (isTold(Channels.DEMANDED_TORQUE) && isTold(Channels.DELIVERED_TORQUE)) {
      torqueTold.add(nextMicros);
    }
    nextMicros += SECOND_MICROS;
  }

  private boolean isTold(Channel channel) {
    return torque.within(channel, nextMicros, FRESH_SECONDS).isPresent();
  }

  private static boolean isTorque(Channel channel) {
    return channel.equals(Channels.DEMANDED_TORQUE) || channel.equals(Channels.DELIVERED_TORQUE);
  }

  /** The hottest that a channel was, degC; empty if it told nothing then. */
  OptionalDouble hottest(Channel channel, TimeSpan span) {
    return temperatures.stream()
        .filter(sample -> sample.channel().equals(channel) && span.holds(sample.timeMicros()))
        .mapToDouble(Sample::value)
        .max();
  }

  /** By how much the air pressure fell, kPa; empty if it was not told by then. */
  OptionalDouble pressureFallKilopascals(TimeSpan span) {
    OptionalDouble before = pressure(span.fromMicros());
    OptionalDouble after = pressure(span.toMicros());
    return before.isPresent() && after.isPresent()
        ? OptionalDouble.of(before.getAsDouble() - after.getAsDouble())
        : OptionalDouble.empty();
  }

  private OptionalDouble pressure(long micros) {
    return pressures.stream()
        .filter(sample -> sample.timeMicros() <= micros)
        .mapToDouble(Sample::value)
        .reduce((_, latest) -> latest);
  }

  /** For how many seconds torque was cut at a hot channel; empty if torque was told too seldom. */
  OptionalDouble deratedSeconds(TimeSpan span) {
    return span.isMostlyTold(torqueTold.stream().filter(span::holds).count())
        ? OptionalDouble.of((double) derated.stream().filter(span::holds).count())
        : OptionalDouble.empty();
  }

  /** What came to the wheels, kWh; empty if power was told too seldom. */
  OptionalDouble wheelKilowattHours(TimeSpan span) {
    List<Sample> told = powers.stream().filter(sample -> span.holds(sample.timeMicros())).toList();
    return span.isMostlyTold(told.size())
        ? OptionalDouble.of(told.stream().mapToDouble(Sample::value).sum() / 3600)
        : OptionalDouble.empty();
  }
}
