package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.thermal.Belief;

/** What a run lost to derate, and how it recovered, on series with a closed form. */
class LostPowerTest {
  private static final LocalDate DAY = LocalDate.of(2031, 5, 1);
  private static final int LOAD = 120;
  private static final int SECONDS = 200;

  /**
   * 1000 N.m of reference and 2000 r/min: a point is 2.094 kW. 70 points are asked for; from a
   * second on some of them are not delivered. The coolant falls from 100 degC to 20 in 90 s.
   */
  private static Run run(int deratesFrom, double points) {
    double[] demanded = new double[SECONDS];
    double[] delivered = new double[SECONDS];
    double[] coolant = new double[SECONDS];
    double[] turns = new double[SECONDS];
    double[] reference = new double[SECONDS];
    Arrays.fill(turns, 2000);
    Arrays.fill(reference, 1000);
    for (int second = 0; second < SECONDS; second++) {
      boolean isLoaded = second < LOAD;
      demanded[second] = isLoaded ? 70 : 9;
      delivered[second] = demanded[second] - (isLoaded && second >= deratesFrom ? points : 1);
      coolant[second] = isLoaded ? 100 : 20 + 80 * Math.exp(-(second - LOAD) / 90.0);
    }
    return HandRuns.run(
        Side.BEFORE,
        0,
        DAY,
        LOAD,
        new RunSeries(
            0,
            SECONDS,
            Map.of(
                Channels.DEMANDED_TORQUE, demanded,
                Channels.DELIVERED_TORQUE, delivered,
                Channels.ENGINE_SPEED, turns,
                Channels.REFERENCE_TORQUE, reference,
                Channels.CHARGE_COOLANT_TEMP, coolant)));
  }

  // 10 points for 60 s at 2.0944 kW a point: 0.349 kWh.
  @Test
  void aDerateIsTimedAndItsEnergyCounted() {
    List<Run> runs = List.of(run(60, 10));

    assertThat(Derates.seconds(runs, Side.BEFORE)).hasValue(60);
    assertThat(Derates.kilowattHours(runs, Side.BEFORE).orElseThrow())
        .isCloseTo(10 * 2.0944 * 60 / 3600, within(0.001));
  }

  @Test
  void fourPointsAreNoDerate() {
    List<Run> runs = List.of(run(60, 4));

    assertThat(Derates.seconds(runs, Side.BEFORE)).isEmpty();
    assertThat(Derates.kilowattHours(runs, Side.BEFORE)).hasValue(0);
  }

  // A gap that stood before anything was hot is the engine's own.
  @Test
  void aGapFromTheStartIsNoDerate() {
    assertThat(Derates.seconds(List.of(run(0, 10)), Side.BEFORE)).isEmpty();
  }

  @Test
  void theOtherSideTellsNothing() {
    assertThat(Derates.kilowattHours(List.of(run(60, 10)), Side.AFTER)).isEmpty();
  }

  // From 100 to 20 + 80 exp(-60/90) in a minute: 38.9 K.
  @Test
  void recoveryIsTheFallOfTheFirstMinute() {
    Belief fall =
        Recovery.kelvinPerMinute(List.of(run(LOAD, 0)), Side.BEFORE, Channels.CHARGE_COOLANT_TEMP)
            .orElseThrow();

    assertThat(fall.middle()).isCloseTo(80 * -Math.expm1(-60 / 90.0), within(1.0));
    assertThat(fall.high() - fall.low()).isGreaterThan(1);
  }

  @Test
  void anEngineThatPullsOnDoesNotRecover() {
    Run pulls = run(LOAD, 0);
    double[] still = new double[SECONDS];
    Arrays.fill(still, 70);
    Map<Channel, double[]> columns = new LinkedHashMap<>(pulls.series().columns());
    columns.put(Channels.DELIVERED_TORQUE, still);
    Run pullsOn = HandRuns.run(Side.BEFORE, 0, DAY, LOAD, new RunSeries(0, SECONDS, columns));

    assertThat(
            Recovery.kelvinPerMinute(List.of(pullsOn), Side.BEFORE, Channels.CHARGE_COOLANT_TEMP))
        .isEmpty();
  }
}
