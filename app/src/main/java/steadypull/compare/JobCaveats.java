package steadypull.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What was answered against a comparison, and what nobody noted. Immutable. */
final class JobCaveats {
  /** As much as starts may differ. */
  private static final double WORTH_TELLING_KELVIN = 3;

  private final RunWords words;

  JobCaveats(RunWords words) {
    this.words = words;
  }

  List<String> of(Job job, List<Run> runs, boolean isOnRollers) {
    List<String> caveats = new ArrayList<>();
    calibration(runs, caveats);
    grille(runs).ifPresent(caveats::add);
    List<String> missing = missing(job, runs, isOnRollers).stream().map(words::what).toList();
    if (!missing.isEmpty()) {
      caveats.add(words.say("job.missing", String.join(", ", missing)));
    }
    return caveats;
  }

  /** What should have been asked and was not answered for every run. */
  static List<Asked> missing(Job job, List<Run> runs, boolean isOnRollers) {
    return Arrays.stream(Asked.values())
        .filter(asked -> isOnRollers || !asked.isOfRollers())
        .filter(asked -> !isAnswered(asked, job, runs))
        .toList();
  }

  private void calibration(List<Run> runs, List<String> caveats) {
    Set<String> before = calibrations(runs, Side.BEFORE);
    Set<String> after = calibrations(runs, Side.AFTER);
    if (!before.isEmpty() && !after.isEmpty() && !before.equals(after)) {
      caveats.add(
          words.say("job.calibration", String.join(", ", before), String.join(", ", after)));
    }
  }

  /** The greatest rise of the air at the grille in a run, where it matters. */
  private Optional<String> grille(List<Run> runs) {
    double most = runs.stream().mapToDouble(JobCaveats::riseKelvin).max().orElse(0);
    return most > WORTH_TELLING_KELVIN
        ? Optional.of(words.say("job.grille", words.number(most, 0)))
        : Optional.empty();
  }

  private static double riseKelvin(Run run) {
    String before = run.notes().words().get(Asked.GRILLE_BEFORE.id());
    String after = run.notes().words().get(Asked.GRILLE_AFTER.id());
    return before == null || after == null
        ? 0
        : Double.parseDouble(after) - Double.parseDouble(before);
  }

  private static Set<String> calibrations(List<Run> runs, Side side) {
    return runs.stream()
        .filter(run -> run.side() == side)
        .flatMap(
            run -> Optional.ofNullable(run.notes().words().get(Asked.CALIBRATION_ID.id())).stream())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static boolean isAnswered(Asked asked, Job job, List<Run> runs) {
    Set<Side> sides = new HashSet<>(runs.stream().map(Run::side).toList());
    boolean isOfSides =
        !sides.isEmpty() && sides.stream().allMatch(side -> job.answer(asked, side).isPresent());
    boolean isOfRuns =
        !runs.isEmpty()
            && runs.stream().allMatch(run -> run.notes().words().containsKey(asked.id()));
    return isOfSides || isOfRuns;
  }
}
