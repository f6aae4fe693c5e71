package steadypull.compare;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import steadypull.compare.RunStart.Known;

/** What some runs cannot show, in sentences. */
final class RunCaveats {
  private RunCaveats() {}

  static List<String> of(List<Run> runs, List<RunSource> sources, Job job) {
    List<String> caveats = new ArrayList<>();
    different(runs, run -> run.start().gear().stream().boxed().toList())
        .ifPresent(gears -> caveats.add("Not all runs were driven in one gear: " + gears + "."));
    different(runs, run -> List.of(run.ground()))
        .ifPresent(
            _ ->
                caveats.add(
                    "Some runs were driven on the road, some on rollers or where it cannot be"
                        + " told."));
    converter(runs).ifPresent(caveats::add);
    basis(runs, sources).ifPresent(caveats::add);
    if (runs.stream().anyMatch(run -> run.start().regeneration() == Known.UNKNOWN)) {
      caveats.add("Nothing told whether the particulate filter was regenerated in these runs.");
    }
    caveats.addAll(ColdSoak.caveats(trips(runs, sources)));
    boolean isOnRollers = runs.stream().anyMatch(run -> run.ground() == Run.Ground.ROLLERS);
    if (isOnRollers) {
      caveats.add(
          "A dynamometer's figure does not predict the road's: the fan's air is not the road's.");
    }
    caveats.addAll(JobCaveats.of(job, runs, isOnRollers));
    return caveats;
  }

  /** What there is of it, if not all runs that tell agree. */
  private static <T extends Comparable<T>> Optional<String> different(
      List<Run> runs, Function<Run, List<T>> told) {
    Set<T> all =
        runs.stream()
            .flatMap(run -> told.apply(run).stream())
            .collect(Collectors.toCollection(TreeSet::new));
    return all.size() <= 1
        ? Optional.empty()
        : Optional.of(all.stream().map(Object::toString).collect(Collectors.joining(", ")));
  }

  private static Optional<String> converter(List<Run> runs) {
    long open = runs.stream().filter(run -> run.start().converter() == Known.NO).count();
    return open == 0
        ? Optional.empty()
        : Optional.of(
            String.format(
                Locale.ROOT,
                "The converter slipped in %d of %d runs; it heats gearbox and radiator.",
                open,
                runs.size()));
  }

  /** The trips of which a run takes part, each once. */
  private static List<TripSeconds> trips(List<Run> runs, List<RunSource> sources) {
    return sources.stream()
        .map(RunSource::trip)
        .filter(trip -> runs.stream().anyMatch(run -> run.source().equals(trip.name())))
        .distinct()
        .toList();
  }

  private static Optional<String> basis(List<Run> runs, List<RunSource> sources) {
    Set<String> words = new LinkedHashSet<>();
    trips(runs, sources).forEach(trip -> words.add(trip.power().basis().words()));
    boolean isGood =
        words.equals(Set.of(PullPower.Basis.WHEELS.words()))
            || words.equals(Set.of(PullPower.Basis.TORQUE.words()));
    return words.isEmpty() || isGood
        ? Optional.empty()
        : Optional.of("Loads were told by " + String.join(" and ", words) + ".");
  }
}
