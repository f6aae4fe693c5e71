package steadypull.vehicle.role;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;

/** However the maker has numbered the sensors, a drive with boost tells their places. */
class RoleWorldsTest {
  private static final int WORLDS = 60;
  private static final double LEAST_SHARE_TOLD = 0.85;

  /** A wrong place would be worse than none; a place that is hardly ever told, useless. */
  @Test
  void shuffledSensorsAreProposedInTheirTruePlacesAndNeverInAnother() {
    Map<Channel, Integer> asked = new TreeMap<>();
    Map<Channel, Integer> told = new TreeMap<>();
    for (int seed = 1; seed <= WORLDS; seed++) {
      ShuffledWorld world = new ShuffledWorld(seed);
      RoleSurvey survey = RoleSurvey.of(world.vehicle.drive(world.drive()), world.layout());
      world.truth.keySet().forEach(channel -> asked.merge(channel, 1, Integer::sum));
      for (RoleFinding.Proposed proposed : survey.proposals()) {
        told.merge(proposed.channel(), 1, Integer::sum);
        assertThat(world.truth)
            .as("seed %d, %s", seed, survey)
            .containsEntry(proposed.channel(), proposed.signalKey());
      }
    }

    // Some rigs are so light, or some days so cool, that there is no minute of boost.
    assertThat(asked).hasSize(7);
    asked.forEach(
        (channel, worlds) ->
            assertThat(told.getOrDefault(channel, 0))
                .as("places told of %s, of %d", channel.id(), worlds)
                .isGreaterThanOrEqualTo((int) (LEAST_SHARE_TOLD * worlds)));
  }
}
