package steadypull.backtest;

import java.util.EnumMap;
import java.util.Map;

/** What following the advice prevents, counted over worlds by what it would take. One thread. */
final class FollowedTable {
  private final Map<FollowedWorld.Remedy, int[]> rows = new EnumMap<>(FollowedWorld.Remedy.class);

  FollowedTable() {
    for (FollowedWorld.Remedy remedy : FollowedWorld.Remedy.values()) {
      rows.put(remedy, new int[3]);
    }
  }

  void add(FollowedWorld world) {
    for (FollowedWorld.Episode episode : world.episodes()) {
      int[] row = row(episode.remedy());
      row[0]++;
      row[1] += episode.isPrevented() ? 1 : 0;
      row[2] += episode.isStopAdvised() ? 1 : 0;
    }
  }

  private int[] row(FollowedWorld.Remedy remedy) {
    return rows.getOrDefault(remedy, new int[3]);
  }

  /** Derates that some action prevents. */
  int preventable() {
    return row(FollowedWorld.Remedy.SPEED)[0] + row(FollowedWorld.Remedy.STOP)[0];
  }

  /** Those of them that following the advice prevented. */
  int prevented() {
    return row(FollowedWorld.Remedy.SPEED)[1] + row(FollowedWorld.Remedy.STOP)[1];
  }

  /** Derates that no advisable speed prevents. */
  int notBySpeed() {
    return row(FollowedWorld.Remedy.STOP)[0] + row(FollowedWorld.Remedy.NOTHING)[0];
  }

  /** Those of them before which a stop was advised. */
  int toldApart() {
    return row(FollowedWorld.Remedy.STOP)[2] + row(FollowedWorld.Remedy.NOTHING)[2];
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder("| it takes | derates | prevented | stop advised |\n");
    rows.forEach(
        (remedy, row) ->
            text.append("| %s | %d | %d | %d |%n".formatted(remedy, row[0], row[1], row[2])));
    return text.toString();
  }
}
