package steadypull.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Vehicle;

/** Tells what was found of runs that do. One thread. */
final class Telling {
  private static final int[] TIMES = {15, 30, 60, 90, 120};
  private static final int LAST = 120;
  private static final int DELAY_AT = 60;
  private static final int LEAST_SECONDS = 181;
  private static final int MOST_SECONDS = 601;

  private final RunSet runs;
  private final Store store;
  private final List<RunLoad> loads;
  private final List<Run> heard;
  private final Fitted fitted;
  private final Caveats words;
  private final CommonLoad load;
  private final Draws draws;
  private final OptionalDouble limit;
  private final int seconds;
  private final int commonSeconds;
  private final double off;

  Telling(
      RunSet runs,
      Store store,
      Vehicle vehicle,
      Conditions wished,
      List<RunLoad> loads,
      HeatSource source,
      Fitted fitted,
      Caveats words) {
    this.runs = runs;
    this.store = store;
    this.loads = loads;
    this.fitted = fitted;
    this.words = words;
    heard = loads.stream().map(RunLoad::run).toList();
    load =
        CommonLoad.of(
            loads, store, source, wished, each -> fitted.onset(loads.indexOf(each), each));
    int longest = heard.stream().mapToInt(Run::loadSeconds).max().orElse(0);
    seconds = Math.clamp(longest + 1, LEAST_SECONDS, MOST_SECONDS);
    commonSeconds = heard.stream().mapToInt(Run::heldSeconds).min().orElse(0);
    draws = new Draws(fitted, store, load, seconds);
    limit = limit(vehicle, wished);
    off = store.isAboveOutside() ? load.outsideCelsius() : 0;
  }

  private OptionalDouble limit(Vehicle vehicle, Conditions wished) {
    Optional<Limit> known = vehicle.limit(store.channel(), load.pressureKilopascals());
    return wished.limitCelsius().isPresent() || known.isEmpty()
        ? wished.limitCelsius()
        : OptionalDouble.of(known.get().celsius());
  }

  Comparison comparison() {
    Claim lasting = Claim.of(draws, Drawn::settledGain);
    Claim delaying = Claim.of(draws, drawn -> drawn.gain(DELAY_AT));
    return new Comparison(
        store.channel(),
        store.isAboveOutside(),
        runs,
        OptionalDouble.of(load.outsideCelsius()),
        OptionalDouble.of(load.kilowatts()),
        limit,
        isOpen(Side.BEFORE) && isOpen(Side.AFTER) ? lasting.verdict(heard) : Verdict.NOT_PROVEN,
        delaying.verdict(heard),
        Optional.of(lasting.gain()),
        OptionalDouble.of(lasting.smallest()),
        lasting.equivalentWithin(),
        IntStream.of(TIMES).mapToObj(this::at).toList(),
        Optional.of(draws.belief(drawn -> drawn.lasts(LAST))),
        Optional.of(draws.belief(drawn -> drawn.delays(LAST))),
        SideReading.of(Side.BEFORE, heard, store, load, draws, limit),
        SideReading.of(Side.AFTER, heard, store, load, draws, limit),
        course(Side.BEFORE),
        course(Side.AFTER),
        HeldPower.of(heard, Side.BEFORE),
        HeldPower.of(heard, Side.AFTER),
        commonSeconds,
        draws.course(drawn -> drawn::lasts, seconds),
        draws.course(drawn -> drawn::delays, seconds),
        caveats(lasting));
  }

  private boolean isOpen(Side side) {
    return switch (store.circuit()) {
      case ThermostatCircuit _ -> Opening.isFull(loads, side, fitted);
      case PlainCircuit _ -> true;
    };
  }

  private GainAt at(int second) {
    return new GainAt(
        second,
        OptionalDouble.of(middle(Side.BEFORE, second)),
        OptionalDouble.of(middle(Side.AFTER, second)),
        Optional.of(draws.belief(drawn -> drawn.gain(second))),
        second <= commonSeconds);
  }

  private double middle(Side side, int second) {
    return draws.belief(drawn -> drawn.of(side).celsius(second)).middle() - off;
  }

  private Course course(Side side) {
    return draws.course(drawn -> second -> drawn.of(side).celsius(second) - off, seconds);
  }

  private List<String> caveats(Claim lasting) {
    List<String> caveats = new ArrayList<>(runs.caveats());
    words.unheard(runs.runs().size() - heard.size(), store.measured()).ifPresent(caveats::add);
    words.regulating(isOpen(Side.BEFORE), isOpen(Side.AFTER)).ifPresent(caveats::add);
    words.heat(load.source()).ifPresent(caveats::add);
    words.calculated(commonSeconds).ifPresent(caveats::add);
    words.wind(heard).ifPresent(caveats::add);
    words.fan(heard).ifPresent(caveats::add);
    words.limit(limit.isPresent()).ifPresent(caveats::add);
    words.missing(lasting, heard).ifPresent(caveats::add);
    return caveats;
  }
}
