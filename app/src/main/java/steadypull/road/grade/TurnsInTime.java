package steadypull.road.grade;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Puts turns where they were driven: a receiver shows a turn a few seconds after it, and who looks
 * back knows better. Stateless.
 */
final class TurnsInTime {
  private TurnsInTime() {}

  /**
   * The same seconds with each turn in the two that it may have been driven in. What the grade is
   * behind it is left to what comes after.
   *
   * @param seconds in the order of time
   */
  static List<RoadSecond> dated(List<RoadSecond> seconds) {
    List<RoadSecond> dated = new ArrayList<>(seconds);
    for (int shown = 0; shown < seconds.size(); shown++) {
      Optional<Turn> turn = seconds.get(shown).turn();
      if (turn.isPresent()) {
        dated.set(shown, dated.get(shown).with(Optional.empty()));
        mark(dated, shown, turn.get().seconds());
      }
    }
    return dated;
  }

  private static void mark(List<RoadSecond> dated, int shown, double turnSeconds) {
    int driven = shown;
    while (driven > 0 && dated.get(driven - 1).seconds() >= turnSeconds) {
      driven--;
    }
    for (int i = driven; i <= Math.min(shown, driven + 1); i++) {
      dated.set(i, dated.get(i).with(Optional.of(new Turn(turnSeconds, false))));
    }
  }
}
