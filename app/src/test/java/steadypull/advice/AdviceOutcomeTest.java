package steadypull.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static steadypull.advice.Story.CHARGE_AIR_LIMIT;
import static steadypull.channel.Channels.CHARGE_AIR_TEMP_OUT;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.thermal.Derate;

/** What became of advice is an event of the trip: followed or not, held or not. */
class AdviceOutcomeTest {
  private final Story story = new Story();

  private static SituationDraft near() {
    return new SituationDraft()
        .nearing(CHARGE_AIR_TEMP_OUT, 97, CHARGE_AIR_LIMIT, 0.9, 100)
        .holdsAt(80);
  }

  private static SituationDraft calm(double speed) {
    return new SituationDraft().calm(CHARGE_AIR_TEMP_OUT, 90, CHARGE_AIR_LIMIT).speed(speed);
  }

  private static SituationDraft cut(double speed) {
    return near().speed(speed).derate(new Derate.Active(CHARGE_AIR_TEMP_OUT, 0, 12));
  }

  private static List<String> outcomes(List<AdviceEvent> told) {
    return told.stream()
        .filter(each -> each.kind().word().startsWith("advice-"))
        .map(each -> each.kind().word() + " " + each.rule().orElseThrow())
        .toList();
  }

  @Test
  void whoFollowsAndStaysUnderTheLimitHasBeenAdvisedWell() {
    story.lasts(10, near());
    story.lasts(30, calm(80));
    assertThat(outcomes(story.told)).containsExactly("advice-held charge-air-near-limit");
  }

  @Test
  void powerThatIsCutAllTheSameIsAFailureOfTheAdvice() {
    story.lasts(10, near());
    story.lasts(10, near().speed(80));
    story.lasts(20, cut(80));
    story.lasts(60, calm(80));
    assertThat(outcomes(story.told)).containsExactly("advice-failed charge-air-derating");
  }

  @Test
  void whoDrivesOnHasNotFollowed() {
    story.lasts(10, near());
    story.lasts(40, calm(90));
    assertThat(outcomes(story.told)).containsExactly("advice-not-followed charge-air-near-limit");
  }

  @Test
  void whatWasCutBeforeHoldsWhenItIsBackUnder() {
    story.lasts(10, cut(90));
    story.lasts(20, cut(80));
    story.lasts(60, calm(80));
    assertThat(outcomes(story.told)).containsExactly("advice-held charge-air-derating");
  }

  /** Two km/h more than advised at the moment of the advice is no answer to it. */
  @Test
  void whoHappensToBeNearTheAdvisedSpeedHasNotFollowed() {
    story.lasts(10, near().speed(82));
    assertThat(story.line().easedSpeed()).hasValue(80);
    story.lasts(40, calm(82));
    assertThat(outcomes(story.told)).containsExactly("advice-not-followed charge-air-near-limit");
  }

  @Test
  void passingTrafficIsNoFollowing() {
    story.lasts(10, near());
    story.lasts(3, near().speed(80));
    story.lasts(40, calm(90));
    assertThat(outcomes(story.told)).containsExactly("advice-not-followed charge-air-near-limit");
  }

  @Test
  void aNoticeAdvisesNothing() {
    story.lasts(10, new SituationDraft().may(CHARGE_AIR_TEMP_OUT, 97, CHARGE_AIR_LIMIT, 0.2));
    story.lasts(60, calm(80));
    assertThat(outcomes(story.told)).isEmpty();
  }
}
