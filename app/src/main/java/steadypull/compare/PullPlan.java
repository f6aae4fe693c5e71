package steadypull.compare;

import java.util.List;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * What a day of pulls is to bring. Immutable.
 *
 * @param groups sides in their order: before, after, and before again where the change is undone
 * @param pullsEach of every group, 1 to 20; three are needed for "proven"
 * @param pullSeconds how long each lasts at least, 30 to 1800 s
 * @param alike channels that must start alike; those that are never heard do not count
 */
public record PullPlan(List<Side> groups, int pullsEach, int pullSeconds, List<Channel> alike) {
  public PullPlan {
    groups = List.copyOf(groups);
    alike = List.copyOf(alike);
    if (groups.isEmpty() || pullsEach < 1 || pullsEach > 20) {
      throw new IllegalArgumentException(
          "A day has groups of 1 to 20 pulls, found %d groups of %d"
              .formatted(groups.size(), pullsEach));
    }
    if (pullSeconds < LoadSearch.SHORTEST_SECONDS || pullSeconds > 1800) {
      throw new IllegalArgumentException("A pull lasts 30 to 1800 s, found " + pullSeconds);
    }
  }

  /** Three pulls of 90 s before and three after, for a channel that is to be compared. */
  public static PullPlan of(Channel compared) {
    boolean isCharge =
        compared.equals(Channels.CHARGE_AIR_TEMP_OUT)
            || compared.equals(Channels.CHARGE_COOLANT_TEMP);
    List<Channel> alike =
        isCharge
            ? List.of(Channels.CHARGE_COOLANT_TEMP, Channels.CHARGE_AIR_TEMP_OUT)
            : List.of(compared);
    return new PullPlan(List.of(Side.BEFORE, Side.AFTER), 3, 90, alike);
  }
}
