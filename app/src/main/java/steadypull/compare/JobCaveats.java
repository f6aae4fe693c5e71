package steadypull.compare;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** What was answered against a comparison, and what nobody noted. */
final class JobCaveats {
  private JobCaveats() {}

  static List<String> of(Job job, List<Run> runs, boolean isOnRollers) {
    List<String> caveats = new ArrayList<>();
    calibration(job, caveats);
    for (Asked asked : Asked.values()) {
      boolean isAsked = isOnRollers || !asked.isOfRollers();
      if (isAsked && !isAnswered(asked, job, runs)) {
        caveats.add(asked.missing());
      }
    }
    return caveats;
  }

  private static void calibration(Job job, List<String> caveats) {
    String before = job.answer(Asked.CALIBRATION_ID, Side.BEFORE).orElse("");
    String after = job.answer(Asked.CALIBRATION_ID, Side.AFTER).orElse("");
    if (!before.isEmpty() && !after.isEmpty() && !before.equals(after)) {
      caveats.add(
          "The calibration was changed (%s, then %s): the engine's own torque is not comparable."
              .formatted(before, after));
    }
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
