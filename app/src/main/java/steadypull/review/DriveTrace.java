package steadypull.review;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.RoadPass;
import steadypull.road.grade.DerivedChannels;
import steadypull.road.grade.PassTrace;
import steadypull.thermal.Derate;
import steadypull.thermal.DerateDetector;
import steadypull.vehicle.TroubleCodes;
import steadypull.vehicle.Vehicle;

/**
 * Looks at a trip once, sample by sample, and keeps what its climbs will be asked for: the road,
 * temperatures, power at the wheels and when torque was cut. One thread.
 */
final class DriveTrace {
  private static final long SECOND_MICROS = 1_000_000;

  private final PassTrace road;
  private final DerivedChannels derived;
  private final DerateDetector derates;
  private final List<Sample> temperatures = new ArrayList<>();
  private final List<Sample> pressures = new ArrayList<>();
  private final List<Sample> powers = new ArrayList<>();
  private final List<Long> cutsTold = new ArrayList<>();
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
    }
  }

  /** Takes the trouble codes as they are known from a moment on; times do not run backwards. */
  void accept(TroubleCodes told, long timeMicros) {
    while (nextMicros <= timeMicros) {
      tick();
    }
    derates.accept(told);
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
    noteDerate(derates.tick(nextMicros));
    if (derates.isTelling()) {
      cutsTold.add(nextMicros);
    }
    nextMicros += SECOND_MICROS;
  }

  /** A derate is told some seconds after its beginning, and sometimes a fault takes its place. */
  private void noteDerate(Derate now) {
    switch (now) {
      case Derate.None() -> {}
      case Derate.Active active -> {
        long from =
            derated.isEmpty()
                ? active.sinceMicros()
                : Math.max(active.sinceMicros(), derated.getLast() + SECOND_MICROS);
        for (long second = from; second <= nextMicros; second += SECOND_MICROS) {
          derated.add(second);
        }
      }
      case Derate.PowerLimited limited ->
          derated.removeIf(second -> second >= limited.sinceMicros());
    }
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

  /** The lowest air pressure of a span, kPa; as before it if it told none, empty if none did. */
  OptionalDouble lowestKilopascals(TimeSpan span) {
    OptionalDouble lowest =
        pressures.stream()
            .filter(sample -> span.holds(sample.timeMicros()))
            .mapToDouble(Sample::value)
            .min();
    return lowest.isPresent() ? lowest : pressure(span.fromMicros());
  }

  private OptionalDouble pressure(long micros) {
    return pressures.stream()
        .filter(sample -> sample.timeMicros() <= micros)
        .mapToDouble(Sample::value)
        .reduce((_, latest) -> latest);
  }

  /**
   * For how many seconds torque was cut at a hot channel, not counting what a fault explains; empty
   * if neither torque nor pedal and power were told, or too seldom.
   */
  OptionalDouble deratedSeconds(TimeSpan span) {
    return span.isMostlyTold(cutsTold.stream().filter(span::holds).count())
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
