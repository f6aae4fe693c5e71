package steadypull.compare;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import steadypull.compare.RunStart.Known;

/** What some runs cannot show, in sentences. Immutable. */
final class RunCaveats {
  private final RunWords words;

  RunCaveats(RunWords words) {
    this.words = words;
  }

  List<String> of(List<Run> runs, List<RunSource> sources, Job job) {
    List<String> caveats = new ArrayList<>();
    different(runs, run -> run.start().gear().stream().mapToObj(Integer::toString).toList())
        .ifPresent(gears -> caveats.add(words.say("runs.gears", gears)));
    different(runs, run -> List.of(words.say("runs.ground." + run.ground().name())))
        .ifPresent(grounds -> caveats.add(words.say("runs.grounds", grounds)));
    converter(runs).ifPresent(caveats::add);
    basis(runs, sources).ifPresent(caveats::add);
    if (runs.stream().anyMatch(run -> run.start().regeneration() == Known.UNKNOWN)) {
      caveats.add(words.say("runs.regeneration"));
    }
    caveats.addAll(ColdSoak.caveats(trips(runs, sources), words));
    boolean isOnRollers = runs.stream().anyMatch(run -> run.ground() == Run.Ground.ROLLERS);
    if (isOnRollers) {
      caveats.add(words.say("runs.rollers"));
    }
    caveats.addAll(new JobCaveats(words).of(job, runs, isOnRollers));
    return caveats;
  }

  /** What there is of it, if not all runs that tell agree. */
  private static Optional<String> different(List<Run> runs, Function<Run, List<String>> told) {
    Set<String> all =
        runs.stream()
            .flatMap(run -> told.apply(run).stream())
            .collect(Collectors.toCollection(TreeSet::new));
    return all.size() <= 1 ? Optional.empty() : Optional.of(String.join(", ", all));
  }

  private Optional<String> converter(List<Run> runs) {
    long open = runs.stream().filter(run -> run.start().converter() == Known.NO).count();
    return open == 0
        ? Optional.empty()
        : Optional.of(words.say("runs.converter", open, runs.size()));
  }

  /** The trips of which a run takes part, each once. */
  private static List<TripSeconds> trips(List<Run> runs, List<RunSource> sources) {
    return sources.stream()
        .map(RunSource::trip)
        .filter(trip -> runs.stream().anyMatch(run -> run.source().equals(trip.name())))
        .distinct()
        .toList();
  }

  /** Worth saying where it is neither all wheels nor all torque. */
  private Optional<String> basis(List<Run> runs, List<RunSource> sources) {
    Set<PullPower.Basis> all = EnumSet.noneOf(PullPower.Basis.class);
    trips(runs, sources).forEach(trip -> all.add(trip.power().basis()));
    boolean isGood =
        all.equals(EnumSet.of(PullPower.Basis.WHEELS))
            || all.equals(EnumSet.of(PullPower.Basis.TORQUE));
    return all.isEmpty() || isGood
        ? Optional.empty()
        : Optional.of(
            words.say(
                "runs.basis",
                all.stream()
                    .map(basis -> words.say("basis." + basis.name()))
                    .collect(Collectors.joining(", "))));
  }
}
