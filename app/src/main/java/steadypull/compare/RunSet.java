package steadypull.compare;

import java.util.List;

/**
 * The runs of a comparison, every one listed. Immutable.
 *
 * @param runs that take part, in the order of {@link Run#place()}
 * @param rejected that do not, with the reason
 * @param caveats sentences on what the runs cannot show, or what was modelled in place of refused
 */
public record RunSet(List<Run> runs, List<RejectedRun> rejected, List<String> caveats) {
  public RunSet {
    runs = List.copyOf(runs);
    rejected = List.copyOf(rejected);
    caveats = List.copyOf(caveats);
  }

  /** Those of one side, in their order. */
  public List<Run> of(Side side) {
    return runs.stream().filter(run -> run.side() == side).toList();
  }
}
