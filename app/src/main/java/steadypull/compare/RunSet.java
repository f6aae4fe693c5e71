package steadypull.compare;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The runs of a comparison, every one listed. Immutable.
 *
 * @param runs that take part, in the order of {@link Run#place()}
 * @param rejected that do not, with the reason
 * @param load how nearly both sides pulled alike; empty if one of them has no run
 * @param job what was asked of it and answered
 * @param caveats sentences on what the runs cannot show, or what was modelled in place of refused
 */
public record RunSet(
    List<Run> runs,
    List<RejectedRun> rejected,
    Optional<LoadMatch> load,
    Job job,
    List<String> caveats) {
  public RunSet {
    runs = List.copyOf(runs);
    rejected = List.copyOf(rejected);
    Objects.requireNonNull(load);
    Objects.requireNonNull(job);
    caveats = List.copyOf(caveats);
  }

  /** Runs of a job of which nothing was said, their loads not compared. */
  public RunSet(List<Run> runs, List<RejectedRun> rejected, List<String> caveats) {
    this(runs, rejected, Optional.empty(), Job.NONE, caveats);
  }

  /** Those of one side, in their order. */
  public List<Run> of(Side side) {
    return runs.stream().filter(run -> run.side() == side).toList();
  }
}
