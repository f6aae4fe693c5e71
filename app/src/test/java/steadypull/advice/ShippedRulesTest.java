package steadypull.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static steadypull.advice.Story.CHARGE_AIR_LIMIT;
import static steadypull.advice.Story.COOLANT_LIMIT;
import static steadypull.advice.Story.words;
import static steadypull.channel.Channels.CHARGE_AIR_TEMP_OUT;
import static steadypull.channel.Channels.ENGINE_COOLANT_TEMP;
import static steadypull.channel.Channels.ENGINE_SPEED;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.thermal.Derate;

/** Every shipped rule has a story that raises it and one that must not. */
class ShippedRulesTest {
  private final Story story = new Story();

  @Test
  void oneChanceInTwentyIsNoticed() {
    var draft = new SituationDraft().may(CHARGE_AIR_TEMP_OUT, 90, CHARGE_AIR_LIMIT, 0.06);
    assertThat(words(story.lasts(10, draft))).containsExactly("raised charge-air-may-reach-limit");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.MAY_REACH);
  }

  @Test
  void lessThanOneChanceInTwentyHolds() {
    var draft = new SituationDraft().may(CHARGE_AIR_TEMP_OUT, 90, CHARGE_AIR_LIMIT, 0.05);
    assertThat(story.lasts(60, draft)).isEmpty();
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.HOLDS);
  }

  @Test
  void evenOddsWithTheLoadHeldAdvise() {
    var draft = new SituationDraft().nearing(CHARGE_AIR_TEMP_OUT, 96, CHARGE_AIR_LIMIT, 0.5, 170);
    assertThat(words(story.lasts(10, draft))).contains("raised charge-air-near-limit");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ADVISE);
  }

  @Test
  void lessThanEvenOddsDoNotAdvise() {
    var draft = new SituationDraft().nearing(CHARGE_AIR_TEMP_OUT, 96, CHARGE_AIR_LIMIT, 0.49, 190);
    assertThat(words(story.lasts(60, draft))).containsExactly("raised charge-air-may-reach-limit");
  }

  @Test
  void evenOddsAreTooFewWhereTheRoadAheadIsKnown() {
    var draft =
        new SituationDraft()
            .roadAheadKnown()
            .nearing(CHARGE_AIR_TEMP_OUT, 96, CHARGE_AIR_LIMIT, 0.69, 120);
    assertThat(words(story.lasts(60, draft))).containsExactly("raised charge-air-may-reach-limit");
  }

  @Test
  void sevenInTenAdviseWhereTheRoadAheadIsKnown() {
    var draft =
        new SituationDraft()
            .roadAheadKnown()
            .nearing(CHARGE_AIR_TEMP_OUT, 96, CHARGE_AIR_LIMIT, 0.7, 120);
    assertThat(words(story.lasts(10, draft))).contains("raised charge-air-near-limit");
  }

  /** A curve or a gust is no reason to take back what was said of a climb and say it anew. */
  @Test
  void whatWasSaidOfALoadThatIsHeldStaysUntilItIsUnlikely() {
    story.lasts(10, held(0.5));
    assertThat(words(story.lasts(60, held(0.16)))).isEmpty();
    assertThat(words(story.lasts(30, held(0.14)))).contains("cleared charge-air-near-limit");
  }

  private static SituationDraft held(double probability) {
    return new SituationDraft()
        .nearing(CHARGE_AIR_TEMP_OUT, 96, CHARGE_AIR_LIMIT, probability, 170);
  }

  /** A dip in a climb's profile is no reason to take back what was said of its top. */
  @Test
  void whatWasSaidOfAKnownRoadStaysUntilItIsUnlikely() {
    story.lasts(10, known(0.7));
    assertThat(words(story.lasts(60, known(0.26)))).isEmpty();
    assertThat(words(story.lasts(30, known(0.24)))).contains("cleared charge-air-near-limit");
  }

  /** Coolant is slow: ten minutes ahead are foretold, and more than likely is asked for. */
  @Test
  void whatIsFarAheadOnAKnownRoadIsAdvisedAboutWhenNineInTenReachIt() {
    assertThat(words(story.lasts(60, farAhead(0.89)))).doesNotContain("raised coolant-near-limit");
    assertThat(words(story.lasts(10, farAhead(0.9)))).contains("raised coolant-near-limit");
  }

  private static SituationDraft farAhead(double p600) {
    return new SituationDraft()
        .roadAheadKnown()
        .nearing(ENGINE_COOLANT_TEMP, 96, COOLANT_LIMIT, 0.1, p600, 400);
  }

  private static SituationDraft known(double probability) {
    return new SituationDraft()
        .roadAheadKnown()
        .nearing(CHARGE_AIR_TEMP_OUT, 96, CHARGE_AIR_LIMIT, probability, 120);
  }

  /** A vehicle that tells too little for a forecast is still told what it can read itself. */
  @Test
  void aChannelOverItsLimitIsSaidWithoutAnyForecast() {
    var draft =
        new SituationDraft()
            .learning(CHARGE_AIR_TEMP_OUT)
            .with(CHARGE_AIR_TEMP_OUT, CHARGE_AIR_LIMIT);
    assertThat(words(story.lasts(10, draft))).contains("raised charge-air-near-limit");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ADVISE);
  }

  @Test
  void aChannelUnderItsLimitIsNotSaidWithoutAForecast() {
    var draft =
        new SituationDraft()
            .learning(CHARGE_AIR_TEMP_OUT)
            .with(CHARGE_AIR_TEMP_OUT, CHARGE_AIR_LIMIT - 1);
    assertThat(story.lasts(60, draft)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "engine_coolant_temp, 112, coolant",
    "engine_oil_temp, 130, engine-oil",
    "transmission_fluid_temp, 120, gearbox-oil",
    "exhaust_temp_before_turbine, 720, exhaust"
  })
  void whatBreaksOverItsLimitWarns(String id, double limit, String word) {
    Channel channel = Channels.find(id).orElseThrow();
    var draft = new SituationDraft().nearing(channel, limit + 1, limit, 1, 0);
    assertThat(words(story.lasts(10, draft))).contains("raised " + word + "-over-limit");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ACT_NOW);
    assertThat(story.advisor.levels()).containsEntry(channel, Level.WARNING);
  }

  @Test
  void whatBreaksAndReachesItsLimitInTwentySecondsWarnsBeforeItIsOver() {
    var draft = new SituationDraft().nearing(ENGINE_COOLANT_TEMP, 110, COOLANT_LIMIT, 0.95, 20);
    story.lasts(10, draft);
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ACT_NOW);
  }

  @Test
  void whatBreaksInTwentyOneSecondsIsOnlyACaution() {
    var draft = new SituationDraft().nearing(ENGINE_COOLANT_TEMP, 110, COOLANT_LIMIT, 0.95, 21);
    story.lasts(30, draft);
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ADVISE);
  }

  /** Temperatures and limits are live before there is any forecast. */
  @Test
  void overLimitWarnsWhileStillLearning() {
    var draft = new SituationDraft().learning(ENGINE_COOLANT_TEMP).with(ENGINE_COOLANT_TEMP, 114);
    story.lasts(5, draft);
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ACT_NOW);
    assertThat(story.line().action()).isEqualTo("Ease off now");
    assertThat(story.line().reason()).isEqualTo("Coolant is over its limit, 114°.");
    assertThat(story.told.getFirst().probability180()).hasValue(1);
  }

  @Test
  void chargeAirOverItsLimitIsNeverAWarning() {
    var draft = new SituationDraft().nearing(CHARGE_AIR_TEMP_OUT, 109, CHARGE_AIR_LIMIT, 1, 0);
    story.lasts(60, draft);
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ADVISE);
  }

  /** What is over its limit is said, whether or not anything could be forecast. */
  @ParameterizedTest
  @CsvSource({"charge_air_temp_out, 105, charge-air", "charge_coolant_temp, 100, charge-coolant"})
  void whatOnlyCostsPowerIsSaidAtItsLimitWithoutAForecast(String id, double limit, String word) {
    Channel channel = Channels.find(id).orElseThrow();
    var draft = new SituationDraft().learning(channel).with(channel, limit);
    assertThat(words(story.lasts(10, draft))).containsExactly("raised " + word + "-near-limit");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ADVISE);
    assertThat(story.line().action()).isEqualTo("Ease off");
  }

  @Test
  void justUnderItsLimitWithoutAForecastNothingIsSaid() {
    var draft =
        new SituationDraft()
            .learning(CHARGE_AIR_TEMP_OUT)
            .with(CHARGE_AIR_TEMP_OUT, CHARGE_AIR_LIMIT - 1);
    assertThat(story.lasts(60, draft)).isEmpty();
  }

  /** A passing reading is no excess; the delay is that of the rule. */
  @Test
  void oneSecondAtTheLimitIsNotSaid() {
    var over = new SituationDraft().learning(CHARGE_AIR_TEMP_OUT).with(CHARGE_AIR_TEMP_OUT, 106);
    var under = new SituationDraft().learning(CHARGE_AIR_TEMP_OUT).with(CHARGE_AIR_TEMP_OUT, 104);
    assertThat(story.lasts(2, over)).isEmpty();
    assertThat(story.lasts(30, under)).isEmpty();
  }

  @Test
  void derateOnAChannelThatOnlyCostsPowerIsACaution() {
    var draft =
        new SituationDraft()
            .calm(CHARGE_AIR_TEMP_OUT, 103, CHARGE_AIR_LIMIT)
            .derate(new Derate.Active(CHARGE_AIR_TEMP_OUT, 0, 11));
    assertThat(words(story.lasts(3, draft)))
        .containsExactly("derate-began", "raised charge-air-derating");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ADVISE);
    assertThat(story.line().reason()).startsWith("The engine is cutting power, 11 % so far.");
  }

  @Test
  void noDerateNoDerateRule() {
    var draft = new SituationDraft().calm(CHARGE_AIR_TEMP_OUT, 103, CHARGE_AIR_LIMIT);
    assertThat(story.lasts(30, draft)).isEmpty();
  }

  @Test
  void powerDownAtNoHotChannelIsAStateOfItsOwn() {
    var draft =
        new SituationDraft()
            .calm(CHARGE_AIR_TEMP_OUT, 70, CHARGE_AIR_LIMIT)
            .derate(new Derate.PowerLimited(0, 35));
    assertThat(words(story.lasts(10, draft)))
        .containsExactly("power-limited", "raised power-limited");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.LIMITED_POWER);
    assertThat(story.line().easedSpeed()).isEmpty();
  }

  /** Design, states of the advice line: what to do, and which code. */
  @Test
  void limitedPowerNamesTheCodeAndSendsToAWorkshop() {
    var draft =
        new SituationDraft()
            .calm(CHARGE_AIR_TEMP_OUT, 70, CHARGE_AIR_LIMIT)
            .code("P0299", "turbocharger A underboost")
            .derate(new Derate.PowerLimited(0, 35));
    var said = story.lasts(10, draft);
    assertThat(words(said)).containsExactly("power-limited", "raised power-limited");
    assertThat(said.getFirst().text()).isEqualTo("Stored: P0299, turbocharger A underboost.");
    assertThat(story.line().action()).isEqualTo("Power limited, P0299");
    assertThat(story.line().reason())
        .isEqualTo("Turbocharger A underboost. Easing will not help: see a workshop.");
  }

  @Test
  void limitedPowerSaysWhetherItIsKnownThatNoCodeIsStored() {
    var draft = new SituationDraft().derate(new Derate.PowerLimited(0, 35));
    story.lasts(10, draft);
    assertThat(story.line().reason()).contains("no temperature explains it").doesNotContain("code");
    story.lasts(1, draft.noCodes());
    assertThat(story.line().reason()).contains("no temperature or code");
  }

  @Test
  void aCodeThatComesUpOnTheWayIsANoticeForAMinute() {
    story.lasts(10, new SituationDraft().calm(CHARGE_AIR_TEMP_OUT, 70, CHARGE_AIR_LIMIT).noCodes());
    var draft =
        new SituationDraft()
            .calm(CHARGE_AIR_TEMP_OUT, 70, CHARGE_AIR_LIMIT)
            .newCode("P0480", "cooling fan 1 control circuit", 10);
    assertThat(words(story.lasts(30, draft))).containsExactly("raised new-trouble-code");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.CODE_STORED);
    assertThat(story.line().action()).isEqualTo("P0480 stored");
    assertThat(story.line().reason())
        .isEqualTo("Cooling fan 1 control circuit. Have a workshop look at it.");
    assertThat(words(story.lasts(60, draft))).containsExactly("cleared new-trouble-code");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.HOLDS);
  }

  @Test
  void aCodeThatWasThereBeforeIsNoNews() {
    var draft =
        new SituationDraft()
            .calm(CHARGE_AIR_TEMP_OUT, 70, CHARGE_AIR_LIMIT)
            .code("P0480", "cooling fan 1 control circuit");
    assertThat(story.lasts(90, draft)).isEmpty();
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.HOLDS);
  }

  @Test
  void aMakersOwnCodeIsNamedWithoutAMeaning() {
    var draft = new SituationDraft().newCode("P1234", "", 0);
    story.lasts(5, draft);
    assertThat(story.line().action()).isEqualTo("P1234 stored");
    assertThat(story.line().reason())
        .isEqualTo("The maker alone knows what it means. Have a workshop look at it.");
  }

  /** At 20 px the line has room for about 85 characters. */
  @Test
  void aLongMeaningIsLeftToTheMenu() {
    var draft =
        new SituationDraft()
            .newCode("P0121", "throttle or pedal position sensor A range or performance", 0);
    story.lasts(5, draft);
    assertThat(story.line().reason())
        .isEqualTo("The menu says what it means. Have a workshop look at it.");
  }

  /** Heat comes first: a code can be read later. */
  @Test
  void aNewCodeNeverHidesWhatATemperatureAsksFor() {
    var draft =
        new SituationDraft()
            .nearing(CHARGE_AIR_TEMP_OUT, 96, CHARGE_AIR_LIMIT, 0.5, 170)
            .newCode("P0480", "cooling fan 1 control circuit", 0);
    story.lasts(10, draft);
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ADVISE);
    assertThat(story.line().channel()).contains(CHARGE_AIR_TEMP_OUT);
  }

  @Test
  void derateAtAHotChannelIsNotAStoredLimit() {
    var draft = new SituationDraft().derate(new Derate.Active(CHARGE_AIR_TEMP_OUT, 0, 35));
    assertThat(words(story.lasts(10, draft))).doesNotContain("raised power-limited");
  }

  @Test
  void fiveSecondsOfSilenceLoseTheLink() {
    story.lasts(5, new SituationDraft().calm(CHARGE_AIR_TEMP_OUT, 70, CHARGE_AIR_LIMIT));
    var silent = new SituationDraft().calm(CHARGE_AIR_TEMP_OUT, 70, CHARGE_AIR_LIMIT).silent(5);
    assertThat(words(story.lasts(1, silent))).containsExactly("raised link-lost");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.LINK_LOST);
    assertThat(story.line().reason()).isEqualTo("Last heard 5 s ago. Advice is paused.");
  }

  @Test
  void lessThanFiveSecondsOfSilenceDoNot() {
    var silent = new SituationDraft().calm(CHARGE_AIR_TEMP_OUT, 70, CHARGE_AIR_LIMIT).silent(4.9);
    assertThat(story.lasts(10, silent)).isEmpty();
  }

  /** A vehicle that was switched off falls silent; nothing is wrong with the link. */
  @Test
  void anEngineThatStandsIsExpectedToFallSilent() {
    var off =
        new SituationDraft()
            .with(ENGINE_SPEED, 0)
            .nearing(ENGINE_COOLANT_TEMP, 114, COOLANT_LIMIT, 1, 0)
            .silent(20);
    assertThat(story.lasts(30, off)).isEmpty();
  }
}
