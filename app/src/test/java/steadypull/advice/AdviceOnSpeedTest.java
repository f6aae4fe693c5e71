package steadypull.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static steadypull.advice.Story.CHARGE_AIR_LIMIT;
import static steadypull.advice.Story.COOLANT_LIMIT;
import static steadypull.channel.Channels.ACCELERATOR_PEDAL;
import static steadypull.channel.Channels.CHARGE_AIR_TEMP_OUT;
import static steadypull.channel.Channels.ENGINE_COOLANT_TEMP;
import static steadypull.channel.Channels.ROAD_GRADE;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import steadypull.channel.UnitSystem;
import steadypull.thermal.Derate;

/** What is asked of speed, and how it is said. */
class AdviceOnSpeedTest {
  private final Story story = new Story();

  private static SituationDraft near() {
    return new SituationDraft()
        .speed(92)
        .nearing(CHARGE_AIR_TEMP_OUT, 97, CHARGE_AIR_LIMIT, 0.9, 68)
        .calm(ENGINE_COOLANT_TEMP, 90, COOLANT_LIMIT);
  }

  @Test
  void theMildestSpeedThatHoldsIsAdvised() {
    story.lasts(5, near().holdsAt(87));
    assertThat(story.line().action()).isEqualTo("Let speed fall to 85");
    assertThat(story.line().reason())
        .isEqualTo("Charge air then settles at 96°. At 92 km/h it reaches 105° in 1:08.");
    assertThat(story.line().easedSpeed()).hasValue(85);
  }

  @Test
  void whereEasingCannotBeComputedNoSpeedIsNamed() {
    story.lasts(5, near().holdsAt(87).onlyForecastAsItIs(CHARGE_AIR_TEMP_OUT));
    assertThat(story.line().action()).isEqualTo("Ease off");
    assertThat(story.line().easedSpeed()).isEmpty();
  }

  @Test
  void aSpeedThatHoldsFourTimesInFiveIsEnough() {
    story.lasts(5, near().holdsAt(0).riskWhereItDoesNotHold(0.2));
    assertThat(story.line().easedSpeed()).hasValue(90);
  }

  @Test
  void aSpeedThatHoldsLessOftenIsNot() {
    story.lasts(5, near().holdsAt(0).riskWhereItDoesNotHold(0.21));
    assertThat(story.line().easedSpeed()).isEmpty();
  }

  @Test
  void aSpeedThatSpoilsAnotherChannelIsNotAdvised() {
    story.lasts(5, near().holdsAt(87).spoiltByEasing(ENGINE_COOLANT_TEMP));
    assertThat(story.line().easedSpeed()).isEmpty();
  }

  @Test
  void whereOneStepIsNotEnoughTheDeepestIsAdvisedAndTheRestIsSaid() {
    story.lasts(5, near().holdsAt(65));
    assertThat(story.line().action()).isEqualTo("Let speed fall to 80");
    assertThat(story.line().reason())
        .isEqualTo("Charge air then reaches 105° in 1:50. 60 km/h would hold it.");
  }

  /** It may well settle, but not four times in five: then it is not said as if it were sure. */
  @Test
  void whatIsOnlyLikelyIsNotSaidAsSure() {
    story.lasts(5, near().holdsAt(65).mayWhereItDoesNotHold());
    assertThat(story.line().reason())
        .isEqualTo("Charge air then most likely settles at 103°. 60 km/h would hold it.");
  }

  @Test
  void whereNoAdvisableSpeedHoldsTheNextParkingAreaIsNamed() {
    story.lasts(5, near().holdsAt(55));
    assertThat(story.line().action()).isEqualTo("Next parking area");
    assertThat(story.line().reason())
        .isEqualTo("At 60 km/h charge air still reaches 105° in 1:50. Idle there for 1 to 3 min.");
    assertThat(story.line().easedSpeed()).isEmpty();
  }

  @Test
  void underTheLowestAdvisableSpeedNoSpeedIsAdvised() {
    story.lasts(5, near().speed(48).holdsAt(45));
    assertThat(story.line().action()).isEqualTo("Next parking area");
    assertThat(story.line().reason()).startsWith("At 48 km/h charge air still reaches 105°");
  }

  @Test
  void flatOutIsSaid() {
    story.lasts(5, near().with(ACCELERATOR_PEDAL, 100).holdsAt(85));
    assertThat(story.line().reason()).endsWith("Flat out it reaches 105° in 1:08.");
  }

  @Test
  void onlyActNowSaysNow() {
    var hot = near().holdsAt(85).nearing(ENGINE_COOLANT_TEMP, 113, COOLANT_LIMIT, 1, 0);
    story.lasts(5, hot);
    assertThat(story.line().action()).isEqualTo("Let speed fall to 85 now");
    assertThat(story.line().reason())
        .isEqualTo("Coolant is over its limit, 113°. Back under 112° in 0:07 once eased.");
  }

  @Test
  void aDerateIsToldWithItsEnd() {
    var derating =
        near()
            .holdsAt(85)
            .nearing(CHARGE_AIR_TEMP_OUT, 108, CHARGE_AIR_LIMIT, 1, 0)
            .derate(new Derate.Active(CHARGE_AIR_TEMP_OUT, 0, 11));
    story.lasts(5, derating);
    assertThat(story.line().action()).isEqualTo("Let speed fall to 85");
    assertThat(story.line().reason())
        .isEqualTo("The engine is cutting power, 11 % so far. Back under 105° in 0:17 once eased.");
  }

  @Test
  void onADescentNothingIsAskedOfSpeed() {
    story.lasts(10, near().holdsAt(85).with(ROAD_GRADE, -2));
    assertThat(story.line().easedSpeed()).isEmpty();
    assertThat(story.line().action()).isEqualTo("Charge air near limit");
    assertThat(story.line().reason()).isEqualTo("Charge air is at 97°. No easing on a descent.");
  }

  @Test
  void aDescentTakesTheAdviceBackAtOnce() {
    story.lasts(5, near().holdsAt(85));
    story.lasts(1, near().holdsAt(85).with(ROAD_GRADE, -3));
    assertThat(story.line().easedSpeed()).isEmpty();
  }

  /** Not easing, but not silence either: it stays hot whatever the road does. */
  @Test
  void whatBreaksAndStaysHotOnADescentIsSentToTheNextParkingArea() {
    var hot = near().with(ROAD_GRADE, -5).nearing(ENGINE_COOLANT_TEMP, 115, COOLANT_LIMIT, 1, 0);
    story.lasts(5, hot);
    assertThat(story.line().action()).isEqualTo("Next parking area now");
    assertThat(story.line().reason())
        .isEqualTo(
            "Coolant is over its limit, 115°. Idle there for 1 to 3 min. Never open the cap.");
  }

  @Test
  void hardlyMovingNothingIsAskedOfSpeed() {
    story.lasts(5, near().speed(0).nearing(ENGINE_COOLANT_TEMP, 113, COOLANT_LIMIT, 1, 0));
    assertThat(story.line().action()).isEqualTo("Coolant over limit");
    assertThat(story.line().reason())
        .isEqualTo("Let the engine idle for 1 to 3 min. Never open the cap.");
  }

  @Test
  void anOddSecondDoesNotChangeTheAdvisedSpeed() {
    story.lasts(5, near().holdsAt(85));
    story.lasts(15, near().holdsAt(81));
    assertThat(story.line().easedSpeed()).hasValue(85);
    story.lasts(10, near().holdsAt(81));
    assertThat(story.line().easedSpeed()).hasValue(80);
  }

  @Test
  void aWorseLevelMayChangeTheAdvisedSpeedAtOnce() {
    story.lasts(5, near().holdsAt(85));
    story.lasts(3, near().holdsAt(81).nearing(ENGINE_COOLANT_TEMP, 113, COOLANT_LIMIT, 1, 0));
    assertThat(story.line().easedSpeed()).hasValue(80);
  }

  @Test
  void aMilderForecastDoesNotTakeTheAdviceBackSoon() {
    story.lasts(5, near().holdsAt(80));
    story.lasts(40, near().holdsAt(90));
    assertThat(story.line().easedSpeed()).hasValue(80);
  }

  @Test
  void adviceThatIsFollowedKeepsItsSpeedUntilItIsOver() {
    story.lasts(5, near().holdsAt(80));
    story.lasts(19, near().speed(80).holdsAt(80).calm(CHARGE_AIR_TEMP_OUT, 95, CHARGE_AIR_LIMIT));
    assertThat(story.line().easedSpeed()).hasValue(80);
    assertThat(story.line().reason()).isEqualTo("Charge air then settles at 96°.");
  }

  @Test
  void theModelIsAskedSeldom() {
    var draft = near().holdsAt(55);
    story.lasts(60, draft);
    assertThat(draft.modelCalls).as("once a second at most").isBetween(1, 60);
  }

  @Test
  void milesGoInStepsOfFive() {
    Story miles = new Story(Story.SHIPPED, Locale.ENGLISH, UnitSystem.IMPERIAL);
    miles.lasts(5, near().holdsAt(87));
    assertThat(miles.line().action()).isEqualTo("Let speed fall to 50");
    assertThat(miles.line().reason())
        .isEqualTo("Charge air then settles at 205°. At 57 mph it reaches 221° in 1:08.");
  }

  @Test
  void theCalmLineNamesTheLeastHeadroom() {
    story.lasts(
        1,
        new SituationDraft()
            .calm(ENGINE_COOLANT_TEMP, 88, COOLANT_LIMIT)
            .calm(CHARGE_AIR_TEMP_OUT, 77, CHARGE_AIR_LIMIT));
    assertThat(story.line().action()).isEqualTo("Holds");
    assertThat(story.line().reason())
        .isEqualTo("Least headroom in the next 3 min: coolant, 24° under its limit.");
  }

  @Test
  void theCalmLineNamesWhatItCannotJudge() {
    story.lasts(
        1,
        new SituationDraft()
            .calm(CHARGE_AIR_TEMP_OUT, 77, CHARGE_AIR_LIMIT)
            .learning(ENGINE_COOLANT_TEMP));
    assertThat(story.line().reason()).endsWith("No forecast yet: coolant.");
  }

  @Test
  void germanIsComplete() {
    Story german = new Story(Story.SHIPPED, Locale.GERMAN, UnitSystem.METRIC);
    german.lasts(5, near().holdsAt(87));
    assertThat(german.line().action()).isEqualTo("Tempo auf 85 senken");
    assertThat(german.line().reason())
        .isEqualTo("Ladeluft bleibt dann bei 96°. Bei 92 km/h: 105° in 1:08.");
  }

  /** Beside a speed shown in miles an hour, 75 would be read as miles an hour. */
  @Test
  void aStandingSpeedIsSaidAnewWhenTheDriverChoosesOtherUnits() {
    Story story = new Story();
    var draft =
        new SituationDraft()
            .holdsAt(75)
            .nearing(CHARGE_AIR_TEMP_OUT, 96, CHARGE_AIR_LIMIT, 0.9, 60);
    story.lasts(10, draft);
    assertThat(story.line().action()).isEqualTo("Let speed fall to 75");

    story.advisor.speakIn(UnitSystem.IMPERIAL);

    // 75 km/h / 1.609344 = 46.6 mph; the mile: international yard and pound agreement, 1959.
    assertThat(story.line().action()).isEqualTo("Let speed fall to 47");
    assertThat(story.line().reason()).contains("°").doesNotContain("km/h");
    story.advisor.speakIn(UnitSystem.METRIC);
    assertThat(story.line().action()).isEqualTo("Let speed fall to 75");
  }
}
