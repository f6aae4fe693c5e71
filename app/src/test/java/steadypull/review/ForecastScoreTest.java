package steadypull.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/** How warnings are scored: drives whose temperatures and derates are put together by hand. */
class ForecastScoreTest {
  private static final Channel AIR = Channels.CHARGE_AIR_TEMP_OUT;
  private static final Channel COOLANT = Channels.ENGINE_COOLANT_TEMP;
  private static final double LIMIT = 85;
  private static final int SECONDS = 1320;

  private ForecastScore score;

  @BeforeEach
  void beginAnew() {
    score = new ForecastScore();
  }

  @Test
  void aWarningThatStandsFromFiveSecondsBeforeADerateCountsWithItsLead() {
    score.add(hotAt(400, 400), List.of(air(340, 500)));

    assertThat(score.derates()).isEqualTo(1);
    assertThat(score.warned()).isEqualTo(1);
    assertThat(score.leadSeconds(0.5)).hasValue(60);
    assertThat(score.falsePerHour()).hasValue(0);
    assertThat(score.hours()).isCloseTo(1200 / 3600.0, within(1e-9));
  }

  @Test
  void aWarningThatComesLaterOrIsTakenBackBeforeDoesNot() {
    score.add(hotAt(400, 400), List.of(air(396, 500), air(300, 399)));
    assertThat(score.warned()).isZero();
    assertThat(score.leadSeconds(0.5)).isEmpty();

    score.add(hotAt(400, 400), List.of(air(395, 400)));
    assertThat(score.warned()).isEqualTo(1);
    assertThat(score.leadSeconds(0.5)).hasValue(5);
  }

  /** The one that was raised first of those that still stand, whichever channel it spoke of. */
  @Test
  void theEarliestWarningThatStillStandsGivesTheLead() {
    Warning coolant = new Warning(COOLANT, 110, 310, 500);
    score.add(hotAt(400, 400), List.of(air(340, 500), coolant, air(200, 390)));
    assertThat(score.leadSeconds(0.5)).hasValue(90);
  }

  @Test
  void aWarningIsFalseIfItsChannelDoesNotComeWithinTwoDegreesInThreeMinutes() {
    score.add(hotAt(480, 480), List.of(air(300, 310)));
    assertThat(score.falsePerHour()).as("hot after 180 s").hasValue(0);

    score.add(hotAt(481, 481), List.of(air(300, 310)));
    assertThat(score.falsePerHour()).as("one in two drives of a third of an hour").hasValue(1.5);
    assertThat(score.advisories()).isEqualTo(2);
  }

  @Test
  void whatIsNearIsTwoDegreesAndNoMore() {
    score.add(drive(second -> second == 400 ? LIMIT - 2 : 60), List.of(air(300, 310)));
    assertThat(score.falsePerHour()).hasValue(0);
    score.add(drive(second -> second == 400 ? LIMIT - 2.1 : 60), List.of(air(300, 310)));
    assertThat(score.falsePerHour()).hasValue(1.5);
  }

  @Test
  void whatIsSlowHasTenMinutes() {
    ScoredDrive drive =
        new ScoredDrive(
            SECONDS,
            List.of(),
            Map.of(COOLANT, celsius(second -> second == 900 ? 109 : 90)),
            Map.of(COOLANT, 110.0));
    score.add(drive, List.of(new Warning(COOLANT, 110, 300, 310)));
    assertThat(score.falsePerHour()).hasValue(0);
    score.add(drive, List.of(new Warning(COOLANT, 110, 299, 310)));
    assertThat(score.falsePerHour()).hasValue(1.5);
  }

  @Test
  void theFirstTwoMinutesDoNotCount() {
    score.add(hotAt(119, 119), List.of(air(20, 130), air(119, 125)));
    assertThat(score.derates()).isZero();
    assertThat(score.advisories()).isZero();

    score.add(hotAt(120, 120), List.of(air(20, 130)));
    assertThat(score.derates()).isEqualTo(1);
    assertThat(score.warned()).isEqualTo(1);
  }

  @Test
  void aDriveShorterThanThatAddsNoTime() {
    score.add(new ScoredDrive(60, List.of(), Map.of(), Map.of()), List.of());
    assertThat(score.hours()).isZero();
    assertThat(score.falsePerHour()).isEmpty();
  }

  /** Nobody can say that it was true. */
  @Test
  void aWarningOfAChannelThatIsNotHeardIsFalse() {
    score.add(drive(_ -> Double.NaN), List.of(air(300, 310)));
    assertThat(score.falsePerHour()).hasValue(3);
  }

  @Test
  void aQuantileBetweenTwoLeadsIsTheLowerOne() {
    for (int lead = 10; lead <= 110; lead += 10) {
      score.add(hotAt(400, 400), List.of(air(400 - lead, 500)));
    }
    assertThat(score.leadSeconds(0.1)).hasValue(20);
    assertThat(score.leadSeconds(0.5)).hasValue(60);
    assertThat(score.leadSeconds(0.55)).hasValue(60);
  }

  private static Warning air(int from, int until) {
    return new Warning(AIR, LIMIT, from, until);
  }

  /** Cool but for one second, and a derate. */
  private static ScoredDrive hotAt(int second, int derateSecond) {
    return new ScoredDrive(
        SECONDS,
        List.of(new ScoredDrive.Derated(derateSecond, derateSecond + 20)),
        Map.of(AIR, celsius(each -> each == second ? LIMIT : 60)),
        Map.of(AIR, LIMIT));
  }

  private static ScoredDrive drive(IntToDoubleFunction celsius) {
    return new ScoredDrive(SECONDS, List.of(), Map.of(AIR, celsius(celsius)), Map.of(AIR, LIMIT));
  }

  private static double[] celsius(IntToDoubleFunction said) {
    double[] celsius = new double[SECONDS + 1];
    Arrays.setAll(celsius, said);
    return celsius;
  }
}
