package steadypull.backtest;

import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import steadypull.backtest.LearntSeason.Score;
import steadypull.channel.Channel;

/** Prints how a vehicle's second and fifth trips are foretold, for DEVELOPERS.md. */
@Tag("bench")
class LearntSeasonBenchTest {
  private static final int WORLDS = 8;

  @Test
  void printHowLaterTripsAreForetold() {
    System.out.println(
        "| channel | trip | RMSE unlearnt, K | learnt | 80 % band held unlearnt | learnt | its"
            + " width unlearnt, K | learnt |");
    System.out.println("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
    for (int judged : new int[] {2, 5}) {
      Map<Channel, Score> unlearnt = LearntSeason.scores();
      Map<Channel, Score> learnt = LearntSeason.scores();
      for (int number = 1; number <= WORLDS; number++) {
        LearntSeason season = new LearntSeason(TowingWorld.of(number));
        for (int trip = 1; trip < judged; trip++) {
          season.drive(trip);
        }
        season.foretell(judged, false, unlearnt);
        season.foretell(judged, true, learnt);
      }
      unlearnt.forEach(
          (channel, before) ->
              print(channel, judged, before, Objects.requireNonNull(learnt.get(channel))));
    }
  }

  private static void print(Channel channel, int trip, Score unlearnt, Score learnt) {
    System.out.printf(
        "| %s | %d | %.1f | %.1f | %.2f | %.2f | %.1f | %.1f |%n",
        channel.id(),
        trip,
        unlearnt.rootMeanSquare(),
        learnt.rootMeanSquare(),
        unlearnt.heldShare(),
        learnt.heldShare(),
        unlearnt.meanWidth(),
        learnt.meanWidth());
  }
}
