package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channels;

/**
 * Torque that is missing at a hot channel for another reason than heat. Beside each story the same
 * one without its reason, which is a derate. That these are no derates is common practice, no
 * source.
 */
class NoDeratesTest {
  private final DerateStory story = new DerateStory().chargeAir(106).speed(80);

  @Test
  void aSpeedLimiterHoldsTheSpeedThatWasReached() {
    story.torque(95, 95).forSeconds(20);
    for (int speed = 81; speed <= 90; speed++) {
      story.speed(speed).forSeconds(1);
    }
    story.torque(95, 70).forSeconds(60);
    assertThat(story.said()).containsOnly(new Derate.None());

    story.speed(89).forSeconds(15); // a limiter would give torque back by now
    assertThat(story.latest()).isInstanceOf(Derate.Active.class);
  }

  @Test
  void atASpeedThatStoodBeforeItIsNoLimiter() {
    story.speed(90).torque(95, 95).forSeconds(30).torque(95, 85).forSeconds(6);
    assertThat(story.latest()).isInstanceOf(Derate.Active.class);
  }

  @Test
  void aLimiterDoesNotLetTheSpeedRiseOn() {
    story.torque(95, 95).forSeconds(20);
    for (int speed = 81; speed <= 90; speed++) {
      story.speed(speed).forSeconds(1);
    }
    story.torque(95, 85).forSeconds(5).speed(92).forSeconds(5).speed(94).forSeconds(15);
    assertThat(story.latest()).isInstanceOf(Derate.Active.class);
  }

  @Test
  void stabilityControlCutsShortlyAsWheelsSlip() {
    story.torque(95, 95).forSeconds(20);
    story.speed(92).torque(95, 40).forSeconds(4);
    story.speed(80).torque(95, 95).forSeconds(10);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void aCutAsLongWithoutSlipIsADerate() {
    story.torque(95, 95).forSeconds(20).torque(95, 40).forSeconds(4);
    assertThat(story.latest()).isInstanceOf(Derate.Active.class);
  }

  /** Whether the gear is told, or shows in engine and road speed. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void aGearThatChangesSlowlyIsNoDerate(boolean isGearTold) {
    say(isGearTold, 5);
    story.torque(95, 95).forSeconds(20);
    say(isGearTold, 4);
    story.says(Channels.ENGINE_SPEED, isGearTold ? 2000 : 2600);
    story.torque(95, 60).forSeconds(5).torque(95, 95).forSeconds(10);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  private void say(boolean isGearTold, int gear) {
    if (isGearTold) {
      story.says(Channels.GEAR, gear);
    }
  }

  @Test
  void aRegeneratingFilterTakesALittleTorque() {
    story.says(Channels.FILTER_REGENERATION, 1).torque(95, 95).forSeconds(20);
    story.torque(95, 87).forSeconds(30);
    assertThat(story.said()).containsOnly(new Derate.None());

    story.torque(95, 75).forSeconds(5);
    assertThat(story.latest()).as("more than it takes").isInstanceOf(Derate.Active.class);
  }

  @Test
  void withoutRegenerationThatLittleIsADerate() {
    story.says(Channels.FILTER_REGENERATION, 0).torque(95, 95).forSeconds(20);
    story.torque(95, 87).forSeconds(5);
    assertThat(story.latest()).isInstanceOf(Derate.Active.class);
  }

  /** 84 to 76 kPa are a climb of 800 m (ISO 2533). */
  @Test
  void thinAirTakesTorqueSlowlyWithThePressure() {
    story.chargeAir(80).says(Channels.BAROMETRIC_PRESSURE, 84).torque(95, 95).forSeconds(30);
    story.chargeAir(106);
    for (int fallen = 1; fallen <= 8; fallen++) {
      story.says(Channels.BAROMETRIC_PRESSURE, 84 - fallen).torque(95, 95 - fallen).forSeconds(60);
    }
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void atTheSamePressureThatIsADerate() {
    story.chargeAir(80).says(Channels.BAROMETRIC_PRESSURE, 84).torque(95, 95).forSeconds(30);
    story.chargeAir(106).torque(95, 87).forSeconds(5);
    assertThat(story.latest()).isInstanceOf(Derate.Active.class);
  }

  @Test
  void whatWasMissingBeforeTheHeatIsNotMissingForIt() {
    story.chargeAir(70).torque(95, 83).forSeconds(120);
    story.chargeAir(106).forSeconds(120);
    assertThat(story.said()).containsOnly(new Derate.None());

    story.torque(95, 73).forSeconds(5);
    assertThat(story.latest())
        .isInstanceOfSatisfying(
            Derate.Active.class,
            active -> assertThat(active.cutPercent()).isCloseTo(10, within(0.5)));
  }

  /** A soft derate of 3 % a kelvin that begins 6 K before the limit that somebody entered. */
  @Test
  void aSoftDerateThatBeganALittleBeforeItsLimitIsTold() {
    story.chargeAir(98).torque(95, 95).forSeconds(60);
    for (int kelvin = 0; kelvin < 6; kelvin++) {
      story.chargeAir(99 + kelvin).torque(95, 92 - 3 * kelvin).forSeconds(5);
    }
    assertThat(story.latest()).isInstanceOf(Derate.Active.class);
  }

  @Test
  void aChannelThatWasHotterAtFullPowerIsNotTheCause() {
    story.says(Channels.ACCELERATOR_PEDAL, 100).chargeAir(112).torque(95, 95).forSeconds(30);
    story.chargeAir(106).torque(95, 85).forSeconds(15);
    assertThat(story.said()).containsOnly(new Derate.None());

    story.says(Channels.CHARGE_COOLANT_TEMP, 101).forSeconds(1);
    assertThat(story.latest())
        .isInstanceOfSatisfying(
            Derate.Active.class,
            active -> assertThat(active.cause()).isEqualTo(Channels.CHARGE_COOLANT_TEMP));
  }

  @Test
  void theCauseIsTheChannelThatWasHotAsTheCutBegan() {
    story.torque(95, 95).forSeconds(20).torque(95, 85).forSeconds(2);
    story.says(Channels.CHARGE_COOLANT_TEMP, 104).forSeconds(4);
    assertThat(story.latest())
        .isInstanceOfSatisfying(
            Derate.Active.class,
            active -> assertThat(active.cause()).isEqualTo(Channels.CHARGE_AIR_TEMP_OUT));
  }

  /** 8 % of 500 N.m at 2000 r/min: 40 N.m, and 40 * 2 pi * 2000 / 60 = 8378 W. */
  @Test
  void theLossIsToldInNewtonMetresAndKilowatts() {
    story.says(Channels.REFERENCE_TORQUE, 500).torque(90, 90).forSeconds(20);
    story.torque(90, 82).forSeconds(6);
    assertThat(story.latest())
        .isInstanceOfSatisfying(
            Derate.Active.class,
            active -> {
              assertThat(active.loss().orElseThrow().newtonMetres()).isCloseTo(40, within(1e-9));
              assertThat(active.loss().orElseThrow().kilowatts()).isCloseTo(8.378, within(0.001));
            });
  }
}
