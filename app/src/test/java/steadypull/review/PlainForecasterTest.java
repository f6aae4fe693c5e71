package steadypull.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/** What the simple forecasters would have said, on ramps whose answer is known in closed form. */
class PlainForecasterTest {
  private static final Channel AIR = Channels.CHARGE_AIR_TEMP_OUT;
  private static final double LIMIT = 100;
  private static final int SECONDS = 900;

  /** 60 degC and 0.1 K a second: 95 degC at 350 s. */
  @Test
  void theThresholdWarnsFiveDegreesBeforeTheLimitAndThreeSecondsLate() {
    assertThat(PlainForecaster.THRESHOLD.warnings(ramp(0.1)))
        .containsExactly(new Warning(AIR, LIMIT, 353, SECONDS + 1));
  }

  /** The line is at 60 + 0.1 (t + 120): 100 degC is met from 280 s on. */
  @Test
  void theLineWarnsTwoMinutesBeforeTheLimit() {
    assertThat(PlainForecaster.STRAIGHT_LINE.warnings(ramp(0.1)))
        .containsExactly(new Warning(AIR, LIMIT, 283, SECONDS + 1));
  }

  /**
   * From 400 s on the temperature rises by 0.5 K a second, which a line of 30 s shows sooner than
   * one of 60.
   */
  @Test
  void theShortLineSeesABendSooner() {
    ScoredDrive bent = drive(second -> 60 + 0.5 * Math.max(0, second - 400));
    int soon = PlainForecaster.SHORT_LINE.warnings(bent).getFirst().fromSecond();
    assertThat(soon).isGreaterThan(403);
    assertThat(PlainForecaster.STRAIGHT_LINE.warnings(bent).getFirst().fromSecond())
        .isGreaterThan(soon + 5);
  }

  @Test
  void neitherWarnsOfWhatStaysCool() {
    assertThat(PlainForecaster.THRESHOLD.warnings(ramp(0))).isEmpty();
    assertThat(PlainForecaster.STRAIGHT_LINE.warnings(ramp(0))).isEmpty();
  }

  @Test
  void aWarningIsTakenBackTwentySecondsAfterItsReason() {
    List<Warning> warnings =
        PlainForecaster.THRESHOLD.warnings(drive(second -> second > 300 && second < 400 ? 97 : 60));
    assertThat(warnings).containsExactly(new Warning(AIR, LIMIT, 304, 420));
  }

  @Test
  void whatLastsThreeSecondsIsNoReason() {
    assertThat(
            PlainForecaster.THRESHOLD.warnings(
                drive(second -> second > 300 && second <= 303 ? 97 : 60)))
        .isEmpty();
  }

  @Test
  void ofAChannelThatIsNotHeardNothingIsSaid() {
    ScoredDrive silent = drive(_ -> Double.NaN);
    assertThat(PlainForecaster.THRESHOLD.warnings(silent)).isEmpty();
    assertThat(PlainForecaster.STRAIGHT_LINE.warnings(silent)).isEmpty();
  }

  private static ScoredDrive ramp(double kelvinASecond) {
    return drive(second -> 60 + kelvinASecond * second + 1e-9);
  }

  private static ScoredDrive drive(IntToDoubleFunction said) {
    double[] celsius = new double[SECONDS + 1];
    Arrays.setAll(celsius, said);
    return new ScoredDrive(SECONDS, List.of(), Map.of(AIR, celsius), Map.of(AIR, LIMIT));
  }
}
