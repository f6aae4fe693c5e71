package steadypull.demo.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Samples come as a polled link delivers them. */
class PolledValuesTest {
  private static final TripLog CAN = TripLog.ofTrips("2026-03-24", "van").getFirst();
  private static final TripLog K_LINE = TripLog.ofTrips("2026-07-04", "Motorhome").getFirst();

  @Test
  void valuesOfOneAnswerShareTheirMoment() {
    assertThat(CAN.channel("engine_speed[r/min]").times())
        .isEqualTo(CAN.channel("delivered_torque[%]").times());
    assertThat(CAN.channel("latitude[deg]").times()).isEqualTo(CAN.channel("altitude[m]").times());
  }

  @Test
  void valuesOfDifferentAnswersNeverDo() {
    assertThat(times("engine_speed[r/min]")).doesNotContainAnyElementsOf(times("gear[1]"));
    assertThat(times("manifold_pressure[kPa]"))
        .doesNotContainAnyElementsOf(times("engine_speed[r/min]"));
  }

  /** Fast 0.25 s, medium 1 s, slow 10 s, as the reader's polite pace has them. */
  @Test
  void everyClassKeepsItsPace() {
    assertThat(meanPeriod(CAN, "engine_speed[r/min]")).isCloseTo(0.25, within(0.005));
    assertThat(meanPeriod(CAN, "manifold_pressure[kPa]")).isCloseTo(0.25, within(0.005));
    assertThat(meanPeriod(CAN, "engine_coolant_temp[degC]")).isCloseTo(1, within(0.01));
    assertThat(meanPeriod(CAN, "transmission_fluid_temp[degC]")).isCloseTo(1, within(0.01));
    assertThat(meanPeriod(CAN, "ambient_air_temp[degC]")).isCloseTo(10, within(0.1));
  }

  @Test
  void arrivalsJitterByMilliseconds() {
    long[] times = CAN.channel("engine_coolant_temp[degC]").times();
    double[] beside = new double[times.length - 1];
    for (int i = 0; i < beside.length; i++) {
      beside[i] = Math.abs(times[i + 1] - times[i] - 1e6) / 1000;
    }
    Arrays.sort(beside);

    assertThat(beside[beside.length / 2]).as("median, ms").isBetween(0.3, 6.0);
    assertThat(Arrays.stream(times).filter(time -> time % 1000 == 0).count())
        .as("on whole milliseconds by chance only")
        .isLessThan(times.length / 50);
  }

  /** An old line with one parameter in a request: about ten answers a second (common practice). */
  @Test
  void anOldLineTellsLittleAndSlowly() {
    double answers =
        K_LINE.channels.entrySet().stream()
            .filter(each -> !each.getKey().matches("l.*|altitude.*"))
            .mapToInt(each -> each.getValue().size())
            .sum();

    assertThat(answers / (K_LINE.endMicros / 1e6)).isBetween(8.0, 13.0);
    assertThat(K_LINE.channels).hasSizeLessThan(12).doesNotContainKey("delivered_torque[%]");
    assertThat(K_LINE.channel("manifold_pressure[kPa]").greatest()).isLessThanOrEqualTo(255);
  }

  @Test
  void aLostLinkLeavesAGapButTheReceiverGoesOn() {
    TripLog log = TripLog.ofTrips("2026-05-18", "Recovery").getFirst();
    long lost = only(log, SeasonEvent.LinkLost.class).timeMicros();
    long back = only(log, SeasonEvent.LinkBack.class).timeMicros();

    assertThat(back - lost).isBetween(55_000_000L, 70_000_000L);
    assertThat(answersBetween(log, "engine_speed[r/min]", lost, back)).isZero();
    // a receiver loses its satellites for itself too: some 4 to 40 s, once or twice an hour
    assertThat(answersBetween(log, "latitude[deg]", lost, back)).isGreaterThan(30);
    assertThat(answersBetween(log, "engine_speed[r/min]", back, back + 10_000_000))
        .isGreaterThan(30);
  }

  @Test
  void receiverSeesNothingIndoorsNorInTheTunnel() {
    assertThat(TripLog.ofTrips("hold").getFirst().channels).doesNotContainKey("latitude[deg]");
    long[] times = CAN.channel("latitude[deg]").times();
    long longest = 0;
    for (int i = 1; i < times.length; i++) {
      longest = Math.max(longest, times[i] - times[i - 1]);
    }
    assertThat(longest).as("600 m at 80 km/h").isBetween(24_000_000L, 40_000_000L);
  }

  @Test
  void oneVehicleHasNoReceiver() {
    assertThat(TripLog.ofTrips("Tipper", "hill").getFirst().channels)
        .doesNotContainKey("latitude[deg]")
        .containsKey("charge_coolant_temp[degC]");
  }

  @Test
  void aTroubleCodeIsPendingThenStoredThenGone() {
    assertThat(codes("2026-06-05")).allMatch(told -> told.pending().isEmpty());
    assertThat(codes("2026-06-19").getLast().pending()).containsExactly("P026A");
    assertThat(codes("2026-06-19").getFirst().pending()).isEmpty();
    assertThat(codes("2026-06-26").getFirst().stored()).containsExactly("P026A");
    assertThat(codes("2026-06-30").getLast().stored()).isEmpty();
  }

  private static List<SeasonEvent.CodesTold> codes(String day) {
    return TripLog.ofTrips(day, "Farm").getFirst().events.stream()
        .filter(SeasonEvent.CodesTold.class::isInstance)
        .map(SeasonEvent.CodesTold.class::cast)
        .toList();
  }

  private static List<Long> times(String header) {
    return Arrays.stream(CAN.channel(header).times()).boxed().toList();
  }

  private static double meanPeriod(TripLog log, String header) {
    long[] times = log.channel(header).times();
    return (times[times.length - 1] - times[0]) / 1e6 / (times.length - 1);
  }

  private static long answersBetween(TripLog log, String header, long from, long to) {
    return Arrays.stream(log.channel(header).times())
        .filter(time -> time > from && time < to)
        .count();
  }

  private static <T extends SeasonEvent> T only(TripLog log, Class<T> kind) {
    List<T> found = log.events.stream().filter(kind::isInstance).map(kind::cast).toList();
    assertThat(found).hasSize(1);
    return found.getFirst();
  }
}
