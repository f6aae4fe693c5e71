package steadypull.compare;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadypull.channel.Channel;

/** Sentences on what a comparison cannot tell, and why. Stateless. */
final class Caveats {
  static final String NO_LOAD =
      "Nothing can be told: what heats the store is told by air flow, fuel rate or torque, and"
          + " not every run has one of them. Log one of these channels in every run.";

  static final String NO_FIT =
      "Nothing can be told: no heat capacity and conductance describe these runs together. Look"
          + " at the runs for a sensor that jumps or stands still.";

  private Caveats() {}

  /** Runs are missing on a side, or on both. */
  static String noRuns(Channel channel, List<Run> heard) {
    String missing =
        Stream.of(Side.values())
            .filter(side -> heard.stream().noneMatch(run -> run.side() == side))
            .map(Caveats::word)
            .collect(Collectors.joining(" and "));
    return "Nothing can be told: no run %s the change has %s over half of its load."
            .formatted(missing, channel.id())
        + " Drive one, or choose another channel.";
  }

  private static String word(Side side) {
    return switch (side) {
      case BEFORE -> "before";
      case AFTER -> "after";
    };
  }
}
