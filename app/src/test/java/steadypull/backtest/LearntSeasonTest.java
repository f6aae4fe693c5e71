package steadypull.backtest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.backtest.LearntSeason.Score;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * A vehicle's second trip is foretold better than if it were its first: the same drives, once begun
 * from what the layout leads one to believe and once from what one trip has taught.
 */
@Execution(ExecutionMode.CONCURRENT)
class LearntSeasonTest {
  private static final int WORLDS = 6;
  private static final int TRIPS_BEFORE = 1;

  @Test
  void theSecondTripErrsLessInItsFirstTenMinutesThanIfItWereTheFirst() {
    Map<Channel, Score> unlearnt = LearntSeason.scores();
    Map<Channel, Score> learnt = LearntSeason.scores();
    for (int number = 1; number <= WORLDS; number++) {
      LearntSeason season = new LearntSeason(TowingWorld.of(number));
      for (int trip = 1; trip <= TRIPS_BEFORE; trip++) {
        season.drive(trip);
      }
      season.foretell(TRIPS_BEFORE + 1, false, unlearnt);
      season.foretell(TRIPS_BEFORE + 1, true, learnt);
    }
    assertThat(meanGain(unlearnt, learnt)).as("root mean square errors, ratio").isLessThan(0.93);
    assertThat(error(learnt, Channels.CHARGE_COOLANT_TEMP))
        .isLessThan(0.95 * error(unlearnt, Channels.CHARGE_COOLANT_TEMP));
    assertThat(learnt.values().stream().mapToDouble(Score::heldShare).average().orElse(0))
        .as("in bands that are no less honest")
        .isGreaterThan(
            unlearnt.values().stream().mapToDouble(Score::heldShare).average().orElse(1) - 0.03);
  }

  /** The geometric mean over channels. */
  private static double meanGain(Map<Channel, Score> unlearnt, Map<Channel, Score> learnt) {
    return Math.exp(
        unlearnt.keySet().stream()
            .mapToDouble(channel -> Math.log(error(learnt, channel) / error(unlearnt, channel)))
            .average()
            .orElse(0));
  }

  private static double error(Map<Channel, Score> scores, Channel channel) {
    Score score = scores.get(channel);
    return score == null ? Double.NaN : score.rootMeanSquare();
  }
}
