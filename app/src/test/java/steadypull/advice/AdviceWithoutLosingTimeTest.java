package steadypull.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static steadypull.advice.Story.CHARGE_AIR_LIMIT;
import static steadypull.advice.Story.COOLANT_LIMIT;
import static steadypull.channel.Channels.AMBIENT_AIR_TEMP;
import static steadypull.channel.Channels.CHARGE_AIR_TEMP_OUT;
import static steadypull.channel.Channels.ENGINE_COOLANT_TEMP;
import static steadypull.channel.Channels.ENGINE_SPEED;
import static steadypull.channel.Channels.ROAD_GRADE;

import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;

/** The mildest action comes first: air conditioning, a gear, a speed, a stop. */
class AdviceWithoutLosingTimeTest {
  private static final Channel AIR_CONDITIONING = new Channel("air_conditioning", "1");

  private final Story story = new Story();

  private static SituationDraft coolant() {
    return new SituationDraft()
        .nearing(ENGINE_COOLANT_TEMP, 106, COOLANT_LIMIT, 0.8, 170)
        .holdsAt(80);
  }

  private static SituationDraft cooled(double outside) {
    return coolant()
        .holdsWithoutAirConditioning()
        .with(AIR_CONDITIONING, 1)
        .with(AMBIENT_AIR_TEMP, outside);
  }

  @Test
  void aLowerGearThatHoldsComesBeforeALowerSpeed() {
    story.lasts(10, coolant().holdsOneGearLower());
    assertThat(story.line().action()).isEqualTo("Take one gear lower");
    assertThat(story.line().reason())
        .isEqualTo("Coolant then settles at 103°. At 90 km/h it reaches 112° in 2:50.");
    assertThat(story.line().easedSpeed()).isEmpty();
  }

  @Test
  void aGearThatDoesNotHoldIsNotAdvised() {
    story.lasts(10, coolant());
    assertThat(story.line().action()).isEqualTo("Let speed fall to 80");
  }

  /** Boost is taken to stay in a lower gear, so charge air gains nothing by it. */
  @Test
  void forChargeAirNoGearIsAskedAbout() {
    story.lasts(
        10,
        coolant().holdsOneGearLower().nearing(CHARGE_AIR_TEMP_OUT, 96, CHARGE_AIR_LIMIT, 0.8, 150));
    assertThat(story.line().action()).isEqualTo("Let speed fall to 80");
  }

  @Test
  void aGearThatWasTakenIsNotAskedForAgainAndASpeedFollows() {
    var asked = coolant().holdsOneGearLower();
    story.lasts(10, asked);
    assertThat(Story.words(story.lasts(2, coolant().holdsOneGearLower().with(ENGINE_SPEED, 2800))))
        .contains("acknowledged coolant-near-limit");
    story.lasts(30, coolant().holdsOneGearLower().with(ENGINE_SPEED, 2800));
    assertThat(story.line().action()).isEqualTo("Let speed fall to 80");
  }

  @Test
  void airConditioningThatIsOnGoesFirst() {
    story.lasts(10, cooled(22).holdsOneGearLower());
    assertThat(story.line().action()).isEqualTo("Switch air con off");
  }

  @Test
  void airConditioningIsLeftAloneOnAHotDayAndWhereNobodyKnowsThatItIsOn() {
    story.lasts(10, cooled(31));
    assertThat(story.line().action()).isEqualTo("Let speed fall to 80");
    Story unknown = new Story();
    unknown.lasts(10, coolant().holdsWithoutAirConditioning().with(AMBIENT_AIR_TEMP, 22));
    assertThat(unknown.line().action()).isEqualTo("Let speed fall to 80");
  }

  @Test
  void onADescentNoGearIsAdvised() {
    story.lasts(10, coolant().holdsOneGearLower().with(ROAD_GRADE, -5));
    assertThat(story.line().action()).doesNotContain("gear");
  }

  @Test
  void whereNoSpeedHoldsTheStopTellsWhatIdlingDoes() {
    story.lasts(10, coolant().holdsAt(10).coolsAtIdle().speed(61));
    assertThat(story.line().action()).isEqualTo("Next parking area");
    assertThat(story.line().reason())
        .isEqualTo("At 61 km/h coolant still reaches 112° in 2:50. Idle there: 103° in 3 min.");
  }
}
