package steadypull.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static steadypull.advice.Story.CHARGE_AIR_LIMIT;
import static steadypull.advice.Story.COOLANT_LIMIT;
import static steadypull.advice.Story.words;
import static steadypull.channel.Channels.CHARGE_AIR_TEMP_OUT;
import static steadypull.channel.Channels.CHARGE_COOLANT_TEMP;
import static steadypull.channel.Channels.ENGINE_COOLANT_TEMP;
import static steadypull.channel.Channels.ENGINE_LOAD;
import static steadypull.channel.Channels.ENGINE_SPEED;
import static steadypull.channel.Channels.MODULE_VOLTAGE;
import static steadypull.channel.Channels.TRANSMISSION_FLUID_TEMP;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.UnitSystem;
import steadypull.thermal.Derate;

/**
 * Every shipped rule about what stands behind a temperature has a story that raises it and one that
 * must not.
 */
class CauseRulesTest {
  private static final Channel FAN_SPEED = new Channel("fan_speed", "r/min");

  private final Story story = new Story();

  private static SituationDraft calm() {
    return new SituationDraft().calm(CHARGE_AIR_TEMP_OUT, 70, CHARGE_AIR_LIMIT);
  }

  private static SituationDraft coolant(double celsius) {
    return calm()
        .calm(ENGINE_COOLANT_TEMP, celsius, COOLANT_LIMIT)
        .with(ENGINE_COOLANT_TEMP, celsius);
  }

  private static SituationDraft climb(double percent) {
    return new SituationDraft()
        .roadAheadKnown()
        .surroundings(new Surroundings(OptionalDouble.of(2300), OptionalDouble.of(percent), 0));
  }

  @Test
  void aClimbAheadThatCannotBeHeldIsNoticedWhileThereIsTime() {
    var draft = climb(7).nearing(CHARGE_AIR_TEMP_OUT, 70, CHARGE_AIR_LIMIT, 0.02, 0.85, 250);
    assertThat(words(story.lasts(10, draft))).containsExactly("raised climb-ahead");
    assertThat(story.line().action()).isEqualTo("7 % ahead is too steep");
    assertThat(story.line().reason())
        .isEqualTo("At 90 km/h charge air reaches 105° in 4:10. Take the climb slower.");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.MAY_REACH);
  }

  @Test
  void aClimbAheadThatIsProbablyHeldIsNotSaid() {
    var draft = climb(7).nearing(CHARGE_AIR_TEMP_OUT, 70, CHARGE_AIR_LIMIT, 0.02, 0.79, 250);
    assertThat(story.lasts(60, draft)).isEmpty();
  }

  @Test
  void aFlatRoadAheadIsNoClimb() {
    var draft = climb(2).nearing(CHARGE_AIR_TEMP_OUT, 70, CHARGE_AIR_LIMIT, 0.02, 0.95, 250);
    assertThat(story.lasts(60, draft)).isEmpty();
  }

  @Test
  void oneThatIsWarnedOfIsNotSaidTwice() {
    var draft = climb(7).nearing(CHARGE_AIR_TEMP_OUT, 96, CHARGE_AIR_LIMIT, 0.8, 0.95, 120);
    assertThat(words(story.lasts(60, draft))).doesNotContain("raised climb-ahead");
  }

  @Test
  void whatIsBackUnderItsLimitRecovers() {
    story.lasts(10, calm().with(CHARGE_AIR_TEMP_OUT, 106).learning(CHARGE_AIR_TEMP_OUT));
    var under =
        calm().calm(CHARGE_AIR_TEMP_OUT, 101, CHARGE_AIR_LIMIT).with(CHARGE_AIR_TEMP_OUT, 101);
    assertThat(words(story.lasts(40, under)))
        .containsExactly("cleared charge-air-near-limit", "raised charge-air-recovering");
    assertThat(story.line().action()).isEqualTo("Recovering, hold on");
    assertThat(story.line().reason())
        .isEqualTo(
            "Charge air is at 101°, 4° under its limit. Give it a few minutes before pulling"
                + " hard.");
  }

  @Test
  void whatIsSevenDegreesUnderHasRecovered() {
    story.lasts(10, calm().with(CHARGE_AIR_TEMP_OUT, 106).learning(CHARGE_AIR_TEMP_OUT));
    var under =
        calm().calm(CHARGE_AIR_TEMP_OUT, 98, CHARGE_AIR_LIMIT).with(CHARGE_AIR_TEMP_OUT, 98);
    assertThat(words(story.lasts(60, under))).containsExactly("cleared charge-air-near-limit");
  }

  @Test
  void whatNeverWasOverItsLimitDoesNotRecover() {
    assertThat(story.lasts(60, coolant(109))).isEmpty();
  }

  @Test
  void afterAHardClimbTheEngineIdlesBeforeItIsSwitchedOff() {
    story.lasts(120, calm().with(ENGINE_LOAD, 95));
    var standing = calm().with(ENGINE_LOAD, 20).speed(0);
    assertThat(words(story.lasts(30, standing)))
        .containsExactly("raised soak-before-switching-off");
    assertThat(story.line().action()).isEqualTo("Idle before switching off");
    assertThat(story.line().reason()).contains("1 to 3 min").contains("Not on dry grass");
    assertThat(words(story.lasts(120, standing)))
        .containsExactly("cleared soak-before-switching-off");
  }

  @Test
  void afterAnEasyDriveItMayBeSwitchedOff() {
    story.lasts(120, calm().with(ENGINE_LOAD, 69));
    assertThat(story.lasts(120, calm().with(ENGINE_LOAD, 20).speed(0))).isEmpty();
  }

  @Test
  void aHardPullOfMoreThanFiveMinutesAgoIsForgotten() {
    story.lasts(120, calm().with(ENGINE_LOAD, 95));
    story.lasts(300, calm().with(ENGINE_LOAD, 30));
    assertThat(story.lasts(120, calm().with(ENGINE_LOAD, 20).speed(0))).isEmpty();
  }

  /** Coolant at rest rises at low speed although nothing is asked of the engine. */
  @Test
  void coolantThatGoesOnRisingAtLowSpeedLacksItsFan() {
    assertThat(words(rises(240, 15, 0.05))).containsExactly("raised fan-not-engaging");
    assertThat(story.line().action()).isEqualTo("Fan may not engage");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ADVISE);
  }

  /** A viscous fan takes its time: what stops rising before has one. */
  @Test
  void coolantThatStopsRisingWithinAMinuteHasItsFan() {
    rises(110, 15, 0.05);
    assertThat(story.lasts(240, crawling(105.5, 15))).isEmpty();
  }

  @Test
  void atRoadSpeedNothingIsToldOfTheFan() {
    assertThat(rises(240, 60, 0.05)).isEmpty();
  }

  @Test
  void aFanThatTellsThatItStandsIsSaidAtRoadSpeedToo() {
    var draft = coolant(106).speed(50).with(FAN_SPEED, 150);
    assertThat(words(story.lasts(120, draft))).containsExactly("raised fan-not-engaging");
    Story other = new Story();
    assertThat(other.lasts(120, coolant(106).speed(50).with(FAN_SPEED, 1900))).isEmpty();
  }

  private List<AdviceEvent> rises(int seconds, double speed, double kelvinEachSecond) {
    int before = story.told.size();
    for (int second = 0; second < seconds; second++) {
      story.lasts(1, crawling(100 + kelvinEachSecond * second, speed));
    }
    return story.told.subList(before, story.told.size());
  }

  private static SituationDraft crawling(double celsius, double speed) {
    return coolant(celsius).speed(speed).with(ENGINE_LOAD, 25);
  }

  @Test
  void chargeAirFarAboveItsCoolantUnderLoadMeansThatThePumpStands() {
    story.lasts(60, calm());
    assertThat(words(story.lasts(30, charge(91, 45, 80))))
        .containsExactly("raised charge-pump-standing");
    assertThat(story.line().reason())
        .isEqualTo("Charge air is 46° above its coolant. Probably the pump: have it looked at.");
  }

  @Test
  void aCoolerThatIsFedOrHardlyUsedSaysNothingOfItsPump() {
    story.lasts(60, calm());
    assertThat(story.lasts(60, charge(80, 45, 80))).isEmpty();
    assertThat(story.lasts(60, charge(91, 45, 40))).isEmpty();
  }

  private static SituationDraft charge(double air, double coolant, double load) {
    return calm()
        .with(CHARGE_AIR_TEMP_OUT, air)
        .with(CHARGE_COOLANT_TEMP, coolant)
        .with(ENGINE_LOAD, load);
  }

  @Test
  void coolantThatSuddenlyDropsUnderLoadMeansStopAndLook() {
    story.lasts(40, coolant(98).with(ENGINE_LOAD, 80));
    assertThat(words(story.lasts(5, coolant(84).with(ENGINE_LOAD, 80))))
        .containsExactly("raised coolant-falls-oddly");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ACT_NOW);
    assertThat(story.line().action()).isEqualTo("Next parking area now");
    assertThat(story.line().reason())
        .isEqualTo(
            "Coolant fell by 14° under load: it may be lost. Switch off there, never open the"
                + " cap.");
  }

  /** The thermostat opens, or a descent cools it: neither is a loss. */
  @Test
  void coolantThatFallsALittleOrWithoutLoadIsNotLost() {
    story.lasts(40, coolant(98).with(ENGINE_LOAD, 80));
    assertThat(story.lasts(40, coolant(88).with(ENGINE_LOAD, 80))).isEmpty();
    story.lasts(40, coolant(98).with(ENGINE_LOAD, 80));
    assertThat(story.lasts(40, coolant(84).with(ENGINE_LOAD, 10))).isEmpty();
  }

  @Test
  void aCoolerThatMovesLessThanMonthsAgoIsSaidOnceATrip() {
    var draft = calm().surroundings(fallen(12));
    assertThat(words(story.lasts(60, draft))).containsExactly("raised cooler-clogging");
    assertThat(story.line().reason())
        .isEqualTo("12 % less than when its trips began. Probably clogged: have it cleaned.");
    assertThat(words(story.lasts(600, draft))).containsExactly("cleared cooler-clogging");
  }

  @Test
  void aCoolerThatMovesAlmostWhatItDidIsNotSaid() {
    assertThat(story.lasts(120, calm().surroundings(fallen(9)))).isEmpty();
  }

  private static Surroundings fallen(double percent) {
    return new Surroundings(OptionalDouble.empty(), OptionalDouble.empty(), percent);
  }

  @Test
  void aChannelThatWasHeardAndIsNoLongerIsMissed() {
    story.lasts(40, calm());
    var lost = calm().lastHeard(TRANSMISSION_FLUID_TEMP, 90, 15);
    assertThat(words(story.lasts(10, lost))).containsExactly("raised gearbox-oil-unheard");
    assertThat(story.line().action()).isEqualTo("No gearbox oil reading");
    assertThat(words(story.lasts(4, calm().with(TRANSMISSION_FLUID_TEMP, 91))))
        .containsExactly("cleared gearbox-oil-unheard");
  }

  @Test
  void aChannelThatIsHeardSeldomOrNeverWasIsNotMissed() {
    story.lasts(40, calm());
    assertThat(story.lasts(5, calm().lastHeard(TRANSMISSION_FLUID_TEMP, 90, 15))).isEmpty();
    assertThat(story.lasts(120, calm())).isEmpty();
  }

  @Test
  void aBatteryThatIsNotChargedForAMinuteIsSaid() {
    story.lasts(60, calm());
    assertThat(words(story.lasts(70, calm().with(MODULE_VOLTAGE, 11.9))))
        .containsExactly("raised battery-not-charged");
    assertThat(story.line().action()).isEqualTo("Battery is not charged");
  }

  @Test
  void twoBatteriesInARowThatAreNotChargedAreSaidToo() {
    story.lasts(60, calm());
    assertThat(words(story.lasts(70, calm().with(MODULE_VOLTAGE, 23.5))))
        .containsExactly("raised battery-not-charged");
  }

  @Test
  void aChargedBatteryAShortDipAndAnIdlingEngineAreNotSaid() {
    story.lasts(60, calm());
    assertThat(story.lasts(50, calm().with(MODULE_VOLTAGE, 11.9))).isEmpty();
    assertThat(story.lasts(120, calm().with(MODULE_VOLTAGE, 12.1))).isEmpty();
    assertThat(story.lasts(120, calm().with(MODULE_VOLTAGE, 27.6))).isEmpty();
    assertThat(story.lasts(120, calm().with(MODULE_VOLTAGE, 11.9).with(ENGINE_SPEED, 700)))
        .isEmpty();
  }

  @Test
  void aLimitThatNobodyConfirmedIsSaidOnceATripWhileTheVehicleStands() {
    Story unconfirmed =
        new Story(Story.unconfirmed(), Story.SHIPPED, Locale.ENGLISH, UnitSystem.METRIC);
    assertThat(unconfirmed.lasts(70, coolant(105))).isEmpty();
    assertThat(words(unconfirmed.lasts(15, coolant(93).speed(0))))
        .containsExactly("raised coolant-limit-unconfirmed", "joined charge-air-limit-unconfirmed");
    assertThat(unconfirmed.line().reason())
        .isEqualTo(
            "Coolant: 112° is a cautious default. Enter the figure of the maker or workshop.");
    assertThat(words(unconfirmed.lasts(600, coolant(93).speed(0))))
        .hasSize(1)
        .first()
        .asString()
        .startsWith("cleared");
  }

  @Test
  void inTheMiddleOfAPullNobodyIsAskedForAFigure() {
    Story unconfirmed =
        new Story(Story.unconfirmed(), Story.SHIPPED, Locale.ENGLISH, UnitSystem.METRIC);
    unconfirmed.lasts(30, coolant(105).with(ENGINE_LOAD, 90));
    assertThat(words(unconfirmed.lasts(60, coolant(105).with(ENGINE_LOAD, 20).speed(0))))
        .doesNotContain("raised coolant-limit-unconfirmed");
  }

  @Test
  void aLimitFromTheWorkshopIsNotDoubted() {
    assertThat(story.lasts(120, coolant(93).speed(0))).isEmpty();
  }

  @Test
  void inGermanTooTheyAreInPlainWords() {
    Story german = new Story(Story.SHIPPED, Locale.GERMAN, UnitSystem.METRIC);
    german.lasts(60, calm());
    german.lasts(30, charge(91, 45, 80));
    assertThat(german.line().action()).isEqualTo("LLK-Pumpe steht wohl");
    assertThat(german.line().reason())
        .isEqualTo(
            "Ladeluft ist 46° wärmer als ihr Wasser. Wahrscheinlich die Pumpe: prüfen lassen.");
  }

  @Test
  void powerThatIsCutIsSaidByTheEngineNotByItsRecovery() {
    var cut =
        calm().derate(new Derate.Active(CHARGE_AIR_TEMP_OUT, 0, 12)).with(CHARGE_AIR_TEMP_OUT, 103);
    assertThat(words(story.lasts(60, cut))).doesNotContain("raised charge-air-recovering");
  }
}
