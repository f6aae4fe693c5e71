package steadypull.drive;

import java.util.List;
import java.util.function.IntToDoubleFunction;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;

/** What a road ahead says otherwise than what was told of it before. Stateless. */
final class RoadChange {
  /** So much more than what was told is worth a word, metres and share. */
  private static final double MORE_METRES = 1000;

  private static final double MORE_SHARE = 0.25;

  /** So much less is one at once. */
  private static final double LESS_METRES = 100;

  /** Grades that differ by more in the mean, a fraction; the first kilometres count. */
  private static final double OTHER_GRADE = 0.002;

  /** What lies within that share of the errors told is no difference. */
  private static final double SHARE_OF_ERROR = 0.5;

  /** Errors that are that share of the ones told are better news. */
  private static final double SURER = 0.5;

  private static final double COMPARED_METRES = 3000;
  private static final double OTHER_ODDS = 0.1;

  private RoadChange() {}

  /** Whether the same kind of thing is known, as far and with the same ways to choose from. */
  static boolean isSame(RoadAhead told, RoadAhead next) {
    if (!(told instanceof RoadAhead.Known before && next instanceof RoadAhead.Known after)) {
      return told.getClass() == next.getClass();
    }
    return before.origin() == after.origin()
        && isSame(before.branches(), after.branches())
        && after.certain().lengthMetres() > before.certain().lengthMetres() - LESS_METRES;
  }

  private static boolean isSame(List<RoadAhead.Branch> before, List<RoadAhead.Branch> after) {
    boolean isSame = before.size() == after.size();
    for (int i = 0; isSame && i < before.size(); i++) {
      isSame = Math.abs(before.get(i).odds() - after.get(i).odds()) < OTHER_ODDS;
    }
    return isSame;
  }

  /** Whether, of what {@link #isSame}, nothing better is known than was told. */
  static boolean isAsGood(RoadAhead told, RoadAhead next) {
    if (!(told instanceof RoadAhead.Known before && next instanceof RoadAhead.Known after)) {
      return true;
    }
    double had = before.certain().lengthMetres();
    double more = after.certain().lengthMetres() - had;
    return more < Math.max(MORE_METRES, MORE_SHARE * had)
        && areGradesAsGood(before.certain(), after.certain());
  }

  private static boolean areGradesAsGood(GradeProfile before, GradeProfile after) {
    double told = mean(before, after, before::error);
    double difference =
        mean(before, after, piece -> Math.abs(before.grade(piece) - after.grade(piece)));
    return difference <= Math.max(OTHER_GRADE, SHARE_OF_ERROR * told)
        && mean(before, after, after::error) >= SURER * told;
  }

  /** Over the next kilometres that both know; 0 where there are none. */
  private static double mean(GradeProfile before, GradeProfile after, IntToDoubleFunction each) {
    int compared =
        Math.min(
            Math.min(before.size(), after.size()), (int) (COMPARED_METRES / before.pieceMetres()));
    double sum = 0;
    for (int piece = 0; piece < compared; piece++) {
      sum += each.applyAsDouble(piece);
    }
    return compared == 0 ? 0 : sum / compared;
  }
}
