package steadypull.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static steadypull.advice.Story.CHARGE_AIR_LIMIT;
import static steadypull.advice.Story.COOLANT_LIMIT;
import static steadypull.advice.Story.words;
import static steadypull.channel.Channels.CHARGE_AIR_TEMP_OUT;
import static steadypull.channel.Channels.ENGINE_COOLANT_TEMP;
import static steadypull.channel.Channels.ENGINE_SPEED;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.thermal.Derate;

/**
 * States and their changes after ANSI/ISA-18.2-2016 and IEC 62682 (state names as the published
 * standard has them, transitions from memory): unacknowledged, acknowledged, returned, shelved,
 * suppressed by design.
 */
class LifeCycleTest {
  private final Story story = new Story();

  private static SituationDraft calm() {
    return new SituationDraft()
        .calm(CHARGE_AIR_TEMP_OUT, 90, CHARGE_AIR_LIMIT)
        .calm(ENGINE_COOLANT_TEMP, 90, COOLANT_LIMIT);
  }

  private static SituationDraft near(double seconds) {
    return calm().holdsAt(80).nearing(CHARGE_AIR_TEMP_OUT, 97, CHARGE_AIR_LIMIT, 0.9, seconds);
  }

  private static SituationDraft hotCoolant() {
    return near(60).nearing(ENGINE_COOLANT_TEMP, 113, COOLANT_LIMIT, 1, 0);
  }

  private static List<String> alarms(List<AdviceEvent> events) {
    return words(events).stream()
        .filter(each -> !each.contains("may-reach") && !each.contains("recovering"))
        .toList();
  }

  @Test
  void gotItTurnsTheFillIntoAFrameAndStays() {
    story.lasts(10, near(100));
    assertThat(words(story.advisor.acknowledge(9_500_000)))
        .containsExactly("acknowledged charge-air-near-limit");
    story.lasts(10, near(90));
    assertThat(story.line().response()).isEqualTo(new AdviceLine.Response.Acknowledged(9_500_000));
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ADVISE);
    assertThat(story.advisor.acknowledge(story.nowMicros())).isEmpty();
  }

  @Test
  void aWorseLevelBreaksAnAcknowledgementAtOnce() {
    story.lasts(10, near(100));
    story.advisor.acknowledge(story.nowMicros());
    assertThat(words(story.lasts(3, hotCoolant()))).contains("escalated coolant-over-limit");
    assertThat(story.line().response()).isEqualTo(new AdviceLine.Response.None());
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ACT_NOW);
  }

  @Test
  void aWorseLevelBreaksASnoozeAtOnce() {
    story.lasts(10, near(170));
    assertThat(words(story.advisor.snooze(story.nowMicros()))).hasSize(1);
    assertThat(words(story.lasts(3, hotCoolant()))).contains("escalated coolant-over-limit");
    assertThat(story.line().response()).isEqualTo(new AdviceLine.Response.None());
  }

  @Test
  void aDerateThatBeginsBreaksASnoozeAtOnce() {
    story.lasts(10, near(170));
    story.advisor.snooze(story.nowMicros());
    var derating = near(60).derate(new Derate.Active(CHARGE_AIR_TEMP_OUT, 10_000_000, 8));
    assertThat(words(story.lasts(1, derating))).contains("unshelved charge-air-derating");
  }

  @Test
  void snoozeLastsHalfTheTimeLeft() {
    story.lasts(10, near(100));
    assertThat(story.advisor.snoozeSeconds()).hasValue(50);
    story.advisor.snooze(story.nowMicros());
    assertThat(story.line().response())
        .isEqualTo(new AdviceLine.Response.Snoozed(story.nowMicros() + 50_000_000));
    assertThat(story.advisor.snoozeSeconds()).isEmpty();
    assertThat(story.lasts(49, near(100))).isEmpty();
    assertThat(words(story.lasts(1, near(100)))).containsExactly("unshelved charge-air-near-limit");
  }

  @Test
  void snoozeLastsThreeMinutesAtMost() {
    story.lasts(10, near(500));
    story.advisor.snooze(story.nowMicros());
    assertThat(story.line().response())
        .isEqualTo(new AdviceLine.Response.Snoozed(story.nowMicros() + 180_000_000));
  }

  @Test
  void showBringsASnoozedAdvisoryBack() {
    story.lasts(10, near(100));
    story.advisor.snooze(story.nowMicros());
    assertThat(words(story.advisor.show(story.nowMicros() + 500_000)))
        .containsExactly("unshelved charge-air-near-limit");
    assertThat(story.line().response()).isEqualTo(new AdviceLine.Response.None());
    assertThat(story.advisor.show(story.nowMicros() + 600_000)).isEmpty();
  }

  @Test
  void aWarningCannotBeSnoozed() {
    story.lasts(10, hotCoolant());
    assertThat(story.advisor.snoozeSeconds()).isEmpty();
    assertThat(story.advisor.snooze(story.nowMicros())).isEmpty();
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ACT_NOW);
  }

  @Test
  void aNoticeHasNothingToAnswer() {
    story.lasts(10, calm().may(CHARGE_AIR_TEMP_OUT, 97, CHARGE_AIR_LIMIT, 0.2));
    assertThat(story.advisor.snooze(story.nowMicros())).isEmpty();
  }

  @Test
  void aDriverWhoFollowsNeedNotPressAnything() {
    story.lasts(10, near(100));
    assertThat(story.line().easedSpeed()).hasValue(80);
    assertThat(words(story.lasts(1, near(100).speed(82))))
        .containsExactly("acknowledged charge-air-near-limit");
  }

  @Test
  void whatIsOverLeavesAfterTwentySecondsAndIsSaidForAMinute() {
    story.lasts(10, near(100));
    assertThat(alarms(story.lasts(20, calm()))).isEmpty();
    assertThat(alarms(story.lasts(1, calm()))).containsExactly("cleared charge-air-near-limit");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.HOLDS_AGAIN);
    assertThat(story.line().reason()).isEqualTo("Charge air settles at 90°.");
    story.lasts(59, calm());
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.HOLDS_AGAIN);
    story.lasts(1, calm());
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.HOLDS);
  }

  @Test
  void holdsAgainTellsTheSecondsDerated() {
    var derating = near(0).derate(new Derate.Active(CHARGE_AIR_TEMP_OUT, 0, 11));
    story.lasts(39, derating);
    assertThat(words(story.lasts(30, calm()))).contains("derate-ended");
    assertThat(story.line().reason())
        .isEqualTo("Charge air is back under its limit and settles at 90°. Derated 38 s.");
  }

  /**
   * Three of the same alarm within 60 s is the usual screen for chattering (ANSI/ISA-18.2-2016,
   * from memory). A forecast that jumps about its threshold every second must not do that.
   */
  @Test
  void aJumpingForecastDoesNotChatter() {
    for (int round = 0; round < 30; round++) {
      story.lasts(4, near(150));
      story.lasts(4, calm());
    }
    assertThat(alarms(story.told)).containsExactly("raised charge-air-near-limit");
  }

  /** Slower than the rule's own delays, so that only what came and went before can hold it. */
  @Test
  void whatComesAndGoesIsRaisedTwiceAndThenStaysUntilAMinuteIsCalm() {
    for (int round = 0; round < 6; round++) {
      story.lasts(4, near(150));
      story.lasts(21, calm());
    }
    assertThat(alarms(story.told))
        .containsExactly(
            "raised charge-air-near-limit",
            "cleared charge-air-near-limit",
            "raised charge-air-near-limit");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ADVISE);
    story.lasts(57, calm());
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ADVISE);
    assertThat(alarms(story.lasts(3, calm()))).containsExactly("cleared charge-air-near-limit");
  }

  @Test
  void aLinkThatComesAndGoesIsSaidToDoSoAndHidesNoAdvice() {
    for (int round = 0; round < 5; round++) {
      story.lasts(2, calm().silent(6));
      story.lasts(4, calm());
    }
    assertThat(alarms(story.told))
        .containsExactly("raised link-lost", "cleared link-lost", "raised link-lost");
    assertThat(story.line().action()).isEqualTo("Link comes and goes");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.MAY_REACH);
    story.lasts(5, near(100));
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ADVISE);
  }

  @Test
  void aForecastThatJumpsFasterThanItsDelayIsNotRaised() {
    for (int round = 0; round < 30; round++) {
      story.lasts(3, near(150));
      story.lasts(1, calm());
    }
    assertThat(alarms(story.told)).isEmpty();
  }

  /** The deadband: 1 degC steps about the limit keep the warning. */
  @Test
  void oneDegreeUnderTheLimitKeepsTheWarning() {
    story.lasts(5, calm().nearing(ENGINE_COOLANT_TEMP, 112, COOLANT_LIMIT, 1, 0));
    assertThat(alarms(story.lasts(120, calm().calm(ENGINE_COOLANT_TEMP, 111, COOLANT_LIMIT))))
        .isEmpty();
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ACT_NOW);
    assertThat(alarms(story.lasts(30, calm().calm(ENGINE_COOLANT_TEMP, 109, COOLANT_LIMIT))))
        .containsExactly("cleared coolant-over-limit");
  }

  @Test
  void aSecondChannelWithTheSameCauseJoins() {
    story.lasts(10, near(100));
    var both = near(90).nearing(ENGINE_COOLANT_TEMP, 106, COOLANT_LIMIT, 0.8, 150);
    assertThat(alarms(story.lasts(30, both))).containsExactly("joined coolant-near-limit");
    assertThat(story.advisor.levels())
        .containsEntry(CHARGE_AIR_TEMP_OUT, Level.CAUTION)
        .containsEntry(ENGINE_COOLANT_TEMP, Level.CAUTION);
    assertThat(story.line().channel()).contains(CHARGE_AIR_TEMP_OUT);
  }

  /** What ends is told of its own channel; another's time to its limit is no news of it. */
  @Test
  void whatIsClearedSaysWhatIsOverAndNoTimeToCome() {
    story.lasts(10, calm().holdsAt(80).nearing(ENGINE_COOLANT_TEMP, 106, COOLANT_LIMIT, 0.8, 150));
    var other = calm().nearing(CHARGE_AIR_TEMP_OUT, 97, CHARGE_AIR_LIMIT, 0.2, 200);
    assertThat(cleared(story.lasts(40, other)))
        .extracting(AdviceEvent::text)
        .containsExactly("Coolant settles at 90°.");
    assertThat(cleared(story.lasts(40, calm())))
        .extracting(AdviceEvent::text)
        .containsExactly("Charge air holds again.");
  }

  private static List<AdviceEvent> cleared(List<AdviceEvent> told) {
    return told.stream().filter(each -> each.kind() == AdviceEvent.Kind.CLEARED).toList();
  }

  @Test
  void whatWasFirstIsSaidWhenAllIsWellAgain() {
    story.lasts(10, near(100));
    story.lasts(10, hotCoolant());
    assertThat(alarms(story.lasts(60, calm()))).containsExactly("cleared coolant-over-limit");
    assertThat(story.line().reason()).endsWith("Charge air was first.");
  }

  @Test
  void aChannelThatWasAloneIsNotSaidToHaveBeenFirst() {
    story.lasts(10, near(100));
    story.lasts(30, calm());
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.HOLDS_AGAIN);
    assertThat(story.line().reason()).doesNotContain("first");
  }

  @Test
  void theLikeliestLeadsWhereNoneIsLikelyToReach() {
    var two =
        new SituationDraft()
            .may(ENGINE_COOLANT_TEMP, 100, COOLANT_LIMIT, 0.1)
            .may(CHARGE_AIR_TEMP_OUT, 97, CHARGE_AIR_LIMIT, 0.4);
    story.lasts(10, two);
    assertThat(story.line().channel()).contains(CHARGE_AIR_TEMP_OUT);
  }

  @Test
  void theAdvisoryEasesWhenOnlyTheLesserRemains() {
    story.lasts(10, hotCoolant());
    assertThat(alarms(story.lasts(30, near(100)))).containsExactly("eased charge-air-near-limit");
  }

  @Test
  void switchingOffSuppressesWithoutSayingThatItHolds() {
    story.lasts(10, near(100));
    var off = near(100).with(ENGINE_SPEED, 0);
    assertThat(alarms(story.lasts(1, off)))
        .containsExactly("cleared charge-air-near-limit", "suppressed charge-air-near-limit");
    assertThat(story.line().state()).isNotEqualTo(AdviceLine.State.HOLDS_AGAIN);
    assertThat(story.lasts(30, off)).isEmpty();
  }

  @Test
  void aLostLinkPausesAdviceAndDoesNotClearIt() {
    story.lasts(10, near(100));
    assertThat(alarms(story.lasts(60, calm().silent(6)))).containsExactly("raised link-lost");
    assertThat(alarms(story.lasts(10, near(100)))).containsExactly("cleared link-lost");
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.ADVISE);
  }

  @Test
  void aStaleChannelIsGivenHalfAMinute() {
    story.lasts(10, near(100));
    assertThat(alarms(story.lasts(30, calm().noData(CHARGE_AIR_TEMP_OUT)))).isEmpty();
    assertThat(alarms(story.lasts(1, calm().noData(CHARGE_AIR_TEMP_OUT))))
        .containsExactly("cleared charge-air-near-limit");
  }

  @Test
  void withoutAnyForecastItIsLearning() {
    story.lasts(
        3, new SituationDraft().learning(ENGINE_COOLANT_TEMP).learning(CHARGE_AIR_TEMP_OUT));
    assertThat(story.line().state()).isEqualTo(AdviceLine.State.LEARNING);
  }
}
