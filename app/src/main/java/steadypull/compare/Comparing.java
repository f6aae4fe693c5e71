package steadypull.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.thermal.Belief;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Vehicle;

/** What a change did, from the runs before and after it. Stateless; deterministic; any thread. */
public final class Comparing {
  private static final int[] TIMES = {15, 30, 60, 90, 120};
  private static final int LEAST_SECONDS = 181;
  private static final int MOST_SECONDS = 601;

  private Comparing() {}

  /**
   * Compares one channel. What the runs cannot tell stays empty, and a caveat says why.
   *
   * @param runs of both sides
   * @param channel a temperature
   * @param vehicle its limits and how its charge air is cooled
   * @param wished conditions
   */
  public static Comparison of(RunSet runs, Channel channel, Vehicle vehicle, Conditions wished) {
    Store store = Store.of(channel, vehicle.layout(), runs.runs());
    List<Run> heard =
        runs.runs().stream().filter(run -> Columns.isHeard(run, store.measured())).toList();
    boolean isBoth =
        Stream.of(Side.values())
            .allMatch(side -> heard.stream().anyMatch(run -> run.side() == side));
    Optional<HeatSource> source = HeatSource.of(store.measured(), heard);
    if (!isBoth) {
      return Untold.of(runs, store, Caveats.noRuns(store.measured(), heard));
    }
    if (source.isEmpty()) {
      return Untold.of(runs, store, Caveats.NO_LOAD);
    }
    List<RunLoad> loads =
        heard.stream().map(run -> new RunLoad(run, store.measured(), source.get())).toList();
    Unknowns unknowns = new Unknowns(store.circuit(), loads, source.get());
    Optional<Fitted> fitted = new JointFit(unknowns, loads).fit();
    if (fitted.isEmpty()) {
      return Untold.of(runs, store, Caveats.NO_FIT);
    }
    CommonLoad load =
        CommonLoad.of(
            loads,
            store,
            source.get(),
            wished,
            each -> fitted.get().onset(loads.indexOf(each), each));
    int seconds =
        Math.clamp(
            heard.stream().mapToInt(Run::loadSeconds).max().orElse(0) + 1,
            LEAST_SECONDS,
            MOST_SECONDS);
    Draws draws = new Draws(fitted.get(), store, load, seconds);
    return told(runs, store, vehicle, wished, heard, load, draws, seconds);
  }

  private static Comparison told(
      RunSet runs,
      Store store,
      Vehicle vehicle,
      Conditions wished,
      List<Run> heard,
      CommonLoad load,
      Draws draws,
      int seconds) {
    double off = store.isAboveOutside() ? load.outsideCelsius() : 0;
    int common = heard.stream().mapToInt(Run::heldSeconds).min().orElse(0);
    List<GainAt> at =
        IntStream.of(TIMES)
            .mapToObj(
                s ->
                    new GainAt(
                        s,
                        OptionalDouble.of(
                            draws.belief(d -> d.of(Side.BEFORE).celsius(s)).middle() - off),
                        OptionalDouble.of(
                            draws.belief(d -> d.of(Side.AFTER).celsius(s)).middle() - off),
                        Optional.of(draws.belief(d -> d.gain(s))),
                        s <= common))
            .toList();
    Claim lasting = Claim.of(draws, Drawn::settledGain);
    Claim delaying = Claim.of(draws, d -> d.gain(60));
    OptionalDouble limit =
        wished.limitCelsius().isPresent()
            ? wished.limitCelsius()
            : vehicle
                .limit(store.channel(), load.pressureKilopascals())
                .map(Limit::celsius)
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
    return new Comparison(
        store.channel(),
        store.isAboveOutside(),
        runs,
        OptionalDouble.of(load.outsideCelsius()),
        OptionalDouble.of(load.kilowatts()),
        limit,
        lasting.verdict(heard),
        delaying.verdict(heard),
        Optional.of(lasting.gain()),
        OptionalDouble.of(lasting.smallest()),
        lasting.equivalentWithin(),
        at,
        Optional.of(draws.belief(d -> d.lasts(120))),
        Optional.of(draws.belief(d -> d.delays(120))),
        figures(draws, Side.BEFORE, off),
        figures(draws, Side.AFTER, off),
        draws.course(d -> s -> d.of(Side.BEFORE).celsius(s) - off, seconds),
        draws.course(d -> s -> d.of(Side.AFTER).celsius(s) - off, seconds),
        HeldPower.of(heard, Side.BEFORE),
        HeldPower.of(heard, Side.AFTER),
        common,
        draws.course(d -> d::lasts, seconds),
        draws.course(d -> d::delays, seconds),
        new ArrayList<>(runs.caveats()));
  }

  private static SideFigures figures(Draws draws, Side side, double off) {
    return new SideFigures(
        Optional.of(draws.belief(d -> d.of(side).joules())),
        Optional.of(draws.belief(d -> d.of(side).watts())),
        Optional.empty(),
        Optional.empty(),
        Optional.of(draws.belief(d -> d.of(side).settled() - off)),
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.<Belief>empty(),
        Optional.empty(),
        Optional.empty());
  }
}
