package steadypull.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;

/**
 * Holds runs against each other: equal loads, like starts. What is too far apart does not take
 * part; what is a little apart is told, for the model to bring to common conditions.
 */
final class RunMatching {
  private final Channel channel;
  private final Job job;
  private final List<RunSource> sources;
  private final RunWords words;

  RunMatching(Channel channel, Job job, List<RunSource> sources, RunWords words) {
    this.words = words;
    this.channel = channel;
    this.job = job;
    this.sources = List.copyOf(sources);
  }

  RunSet match(List<FoundRun> found, List<RejectedRun> refused) {
    List<RejectedRun> rejected = new ArrayList<>(refused);
    List<String> caveats = new ArrayList<>();
    LoadComparison loads = LoadComparison.of(found, words);
    List<FoundRun> alike = loads.alike(rejected, caveats);
    List<FoundRun> equal = new EqualLoad(alike).windowed(rejected, words);
    List<FoundRun> left = new StartComparison(channel, words).alike(equal, rejected, caveats);
    List<Run> runs = left.stream().map(FoundRun::run).toList();
    Optional<LoadMatch> match = match(left, common(left, loads.windowSeconds()));
    match.map(loads::mismatch).ifPresent(caveats::addAll);
    chosen(left).ifPresent(caveats::add);
    caveats.addAll(new RunCaveats(words).of(runs, sources, job));
    return new RunSet(runs, rejected, match, job, caveats);
  }

  private Optional<String> chosen(List<FoundRun> runs) {
    long chosen =
        runs.stream()
            .filter(found -> found.stretch().beginning() == Stretch.Beginning.CHOSEN)
            .count();
    return chosen == 0
        ? Optional.empty()
        : Optional.of(words.say("runs.chosen", chosen, runs.size()));
  }

  /** For how long all of them pulled alike, seconds; the first window at least. */
  private static int common(List<FoundRun> runs, int first) {
    return Math.max(
        first, runs.stream().mapToInt(found -> found.run().heldSeconds()).min().orElse(first));
  }

  private static Optional<LoadMatch> match(List<FoundRun> runs, int window) {
    OptionalDouble before = mean(runs, Side.BEFORE, window);
    OptionalDouble after = mean(runs, Side.AFTER, window);
    return before.isPresent() && after.isPresent()
        ? Optional.of(new LoadMatch(window, before.getAsDouble(), after.getAsDouble()))
        : Optional.empty();
  }

  private static OptionalDouble mean(List<FoundRun> runs, Side side, int window) {
    return runs.stream()
        .filter(found -> found.run().side() == side)
        .mapToDouble(found -> found.kilowatts(window))
        .average();
  }
}
