package steadypull.compare;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.compare.RunStart.Known;

/** Reads one run out of a trip: its seconds, the state at its start and what was noted of it. */
final class RunReading {
  private static final int SECONDS_BEFORE = 120;

  /** Recovery after the pull. */
  private static final int SECONDS_AFTER = 300;

  /** A start is what was read in so many seconds before the load; sensors step by whole degrees. */
  private static final int START_SECONDS = 5;

  private static final List<Channel> AT_START =
      List.of(
          Channels.ENGINE_COOLANT_TEMP,
          Channels.CHARGE_COOLANT_TEMP,
          Channels.CHARGE_AIR_TEMP_IN,
          Channels.CHARGE_AIR_TEMP_OUT,
          Channels.INTAKE_AIR_TEMP,
          Channels.ENGINE_OIL_TEMP,
          Channels.TRANSMISSION_FLUID_TEMP,
          Channels.EXHAUST_TEMP_BEFORE_TURBINE);

  /** First words of an answer, English and German. */
  private static final Set<String> ON = Set.of("on", "yes", "true", "an", "ein", "ja");

  private static final Set<String> OFF = Set.of("off", "no", "false", "aus", "nein");

  private final RunSource source;
  private final List<Stretch> all;
  private final JobNotes notes;

  /**
   * A reading.
   *
   * @param all stretches of the whole trip, earliest first
   */
  RunReading(RunSource source, List<Stretch> all, JobNotes notes) {
    this.source = source;
    this.all = all;
    this.notes = notes;
  }

  Run read(Stretch stretch) {
    TripSeconds trip = source.trip();
    Job.OfRun said = notes.of(trip.name(), stretch, source.side());
    RunNotes words = JobNotes.notes(said, trip);
    return new Run(
        trip.name(),
        stretch.onset(),
        source.side(),
        source.place(),
        trip.day(),
        trip.vehicle(),
        RunGround.of(trip, stretch),
        stretch.seconds(),
        HeldLoad.seconds(trip.power(), stretch),
        series(stretch),
        start(stretch, words),
        words);
  }

  private RunSeries series(Stretch stretch) {
    TripSeconds trip = source.trip();
    int from = Math.max(0, stretch.onset() - SECONDS_BEFORE);
    int to = Math.min(trip.seconds(), stretch.end() + SECONDS_AFTER);
    for (Stretch other : all) {
      if (other.onset() >= stretch.end()) {
        to = Math.min(to, other.onset());
      }
    }
    return new RunSeries(from - stretch.onset(), to - from, trip.columns(from, to));
  }

  private RunStart start(Stretch stretch, RunNotes words) {
    TripSeconds trip = source.trip();
    GearSeen gear = GearSeen.of(trip, stretch);
    return new RunStart(
        temperatures(stretch),
        outside(stretch, words),
        Figures.median(atOnset(Channels.BAROMETRIC_PRESSURE, stretch)),
        sinceLast(stretch),
        gear.gear(),
        Figures.mean(trip.span(Channels.VEHICLE_SPEED, stretch.onset(), stretch.end())),
        trip.power().mean(stretch.onset(), stretch.end()),
        gear.converter(),
        noted(words, Asked.AIR_CONDITIONING),
        regeneration(stretch),
        noted(words, Asked.FAN_ENGAGED),
        ThermostatSeen.of(trip, stretch));
  }

  private Map<Channel, Double> temperatures(Stretch stretch) {
    Map<Channel, Double> temperatures = new HashMap<>();
    for (Channel channel : AT_START) {
      Figures.mean(atOnset(channel, stretch))
          .ifPresent(celsius -> temperatures.put(channel, celsius));
    }
    return temperatures;
  }

  /** A probe of one's own goes before the vehicle's sensor, which soaks in heat at standstill. */
  private OptionalDouble outside(Stretch stretch, RunNotes words) {
    OptionalDouble probe = JobNotes.probe(words);
    return probe.isPresent()
        ? probe
        : Figures.median(
            source.trip().span(Channels.AMBIENT_AIR_TEMP, stretch.onset(), stretch.end()));
  }

  private double[] atOnset(Channel channel, Stretch stretch) {
    return source.trip().span(channel, stretch.onset() - START_SECONDS, stretch.onset() + 1);
  }

  private OptionalDouble sinceLast(Stretch stretch) {
    Optional<Stretch> last =
        all.stream().filter(other -> other.end() <= stretch.onset()).reduce((_, later) -> later);
    return last.isPresent()
        ? OptionalDouble.of(stretch.onset() - last.get().end())
        : OptionalDouble.empty();
  }

  private Known regeneration(Stretch stretch) {
    OptionalDouble most =
        Figures.most(
            source.trip().span(Channels.FILTER_REGENERATION, stretch.onset(), stretch.end()));
    if (most.isEmpty()) {
      return Known.UNKNOWN;
    }
    return most.getAsDouble() >= 0.5 ? Known.YES : Known.NO;
  }

  private static Known noted(RunNotes words, Asked asked) {
    String answer = words.words().getOrDefault(asked.id(), "").strip().toLowerCase(Locale.ROOT);
    String first = answer.split("[^\\p{L}]", -1)[0];
    if (OFF.contains(first)) {
      return Known.NO;
    }
    return ON.contains(first) ? Known.YES : Known.UNKNOWN;
  }
}
