package steadypull.compare;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import steadypull.channel.Channel;
import steadypull.vehicle.Vehicle;

/** What a change did, from the runs before and after it. Stateless; deterministic; any thread. */
public final class Comparing {
  private Comparing() {}

  /**
   * Compares one channel, in English. What the runs cannot tell stays empty, and a caveat says why.
   *
   * @param runs of both sides
   * @param channel a temperature
   * @param vehicle its limits and how its charge air is cooled
   * @param wished conditions
   */
  public static Comparison of(RunSet runs, Channel channel, Vehicle vehicle, Conditions wished) {
    return of(runs, channel, vehicle, wished, Locale.ENGLISH);
  }

  /** The same with its caveats in the reader's language. */
  public static Comparison of(
      RunSet runs, Channel channel, Vehicle vehicle, Conditions wished, Locale reader) {
    Caveats caveats = new Caveats(reader);
    Store store = Store.of(channel, vehicle.layout(), runs.runs());
    List<Run> heard =
        runs.runs().stream().filter(run -> Columns.isHeard(run, store.measured())).toList();
    boolean isBoth =
        Stream.of(Side.values())
            .allMatch(side -> heard.stream().anyMatch(run -> run.side() == side));
    if (!isBoth) {
      return Untold.of(runs, store, caveats.noRuns(store.measured(), heard));
    }
    Optional<HeatSource> source = HeatSource.of(store.measured(), heard);
    if (source.isEmpty()) {
      return Untold.of(runs, store, caveats.noLoad());
    }
    List<RunLoad> loads =
        heard.stream().map(run -> new RunLoad(run, store.measured(), source.get())).toList();
    return new JointFit(new Unknowns(store.circuit(), loads, source.get()), loads)
        .fit()
        .map(
            fitted ->
                new Telling(runs, store, vehicle, wished, loads, source.get(), fitted, caveats)
                    .comparison())
        .orElseGet(() -> Untold.of(runs, store, caveats.noFit()));
  }
}
