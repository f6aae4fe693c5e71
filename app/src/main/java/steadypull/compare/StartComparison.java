package steadypull.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * Which of some runs began alike. Within 3 K repeats agree (common practice, no source); up to 10 K
 * the model brings starts together, and that is said; what is farther apart is refused. Charge air
 * and its coolant count above outside air, engine coolant and oils as they are.
 */
final class StartComparison {
  private static final double ALIKE_KELVIN = 3;

  /** A model that must bridge more is the comparison, not the runs (our choice). */
  private static final double MODELLED_KELVIN = 10;

  private static final List<Channel> ABSOLUTE =
      List.of(
          Channels.ENGINE_COOLANT_TEMP, Channels.ENGINE_OIL_TEMP, Channels.TRANSMISSION_FLUID_TEMP);

  private final Channel compared;
  private final RunWords words;

  StartComparison(Channel compared, RunWords words) {
    this.compared = compared;
    this.words = words;
  }

  /** Those that may be compared, in their order. */
  List<FoundRun> alike(List<FoundRun> runs, List<RejectedRun> rejected, List<String> caveats) {
    List<FoundRun> left = runs;
    Map<Channel, Double> spreads = new LinkedHashMap<>();
    for (Channel channel : looked()) {
      OptionalDouble middle = middle(left, channel);
      if (middle.isEmpty()) {
        continue;
      }
      left = near(left, channel, middle.getAsDouble(), rejected);
      double farthest =
          left.stream()
              .flatMap(found -> start(found.run(), channel).stream())
              .mapToDouble(celsius -> Math.abs(celsius - middle.getAsDouble()))
              .max()
              .orElse(0);
      spreads.put(channel, farthest);
    }
    spreads.forEach(
        (channel, kelvin) -> {
          if (kelvin > ALIKE_KELVIN) {
            caveats.add(modelled(channel, kelvin));
          }
        });
    return left;
  }

  private List<FoundRun> near(
      List<FoundRun> runs, Channel channel, double middle, List<RejectedRun> rejected) {
    List<FoundRun> near = new ArrayList<>();
    for (FoundRun found : runs) {
      double apart = start(found.run(), channel).map(own -> Math.abs(own - middle)).orElse(0.0);
      if (apart <= MODELLED_KELVIN) {
        near.add(found);
      } else {
        rejected.add(RunFinding.rejected(found.run(), refused(found.run(), channel, middle)));
      }
    }
    return near;
  }

  /** The store that is heated, and what stands before it. */
  private List<Channel> looked() {
    if (ABSOLUTE.contains(compared)) {
      return List.of(compared);
    }
    return compared.equals(Channels.CHARGE_COOLANT_TEMP)
        ? List.of(compared)
        : List.of(Channels.CHARGE_COOLANT_TEMP, compared);
  }

  private static OptionalDouble middle(List<FoundRun> runs, Channel channel) {
    return Figures.median(
        runs.stream()
            .flatMap(found -> start(found.run(), channel).stream())
            .mapToDouble(Double::doubleValue)
            .toArray());
  }

  private static Optional<Double> start(Run run, Channel channel) {
    Optional<Double> celsius = Optional.ofNullable(run.start().temperaturesCelsius().get(channel));
    if (ABSOLUTE.contains(channel) || celsius.isEmpty()) {
      return celsius;
    }
    OptionalDouble outside = run.start().outsideCelsius();
    return outside.isEmpty()
        ? Optional.empty()
        : Optional.of(celsius.get() - outside.getAsDouble());
  }

  private String refused(Run run, Channel channel, double middle) {
    return words.say(
        ABSOLUTE.contains(channel) ? "start.refused.absolute" : "start.refused.above",
        words.name(channel),
        words.number(start(run, channel).orElse(Double.NaN), 0),
        words.number(middle, 0),
        words.number(MODELLED_KELVIN, 0));
  }

  private String modelled(Channel channel, double kelvin) {
    return words.say(
        "start.modelled",
        words.name(channel),
        words.number(kelvin, 0),
        words.number(ALIKE_KELVIN, 0));
  }
}
