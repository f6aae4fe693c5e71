package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import steadypull.channel.Channels;

/**
 * Vehicles that do not tell demanded and delivered torque. Pedal, fuel and speed tell stories;
 * beside each that is no derate the same one without its reason.
 */
class PowerFallTest {
  private final DerateStory story = new DerateStory().chargeAir(106).speed(80);

  private DerateStory flooredAt(double litresPerHour) {
    return story.pedalAndFuel(100, litresPerHour);
  }

  /** A tenth of 48 L/h; 4.8 * 35.74 / 3.6 * 0.4 = 19.1 kW, 91 N.m at 2000 r/min. */
  @Test
  void fuelThatFallsWithThePedalOnTheFloorIsADerate() {
    story.says(Channels.BAROMETRIC_PRESSURE, 98);
    flooredAt(48).forSeconds(30).to(Channels.FUEL_RATE, 43.2, 10).forSeconds(6);
    assertThat(story.latest())
        .isInstanceOfSatisfying(
            Derate.Active.class,
            active -> {
              assertThat(active.cause()).isEqualTo(Channels.CHARGE_AIR_TEMP_OUT);
              assertThat(active.sinceMicros() / 1e6).isBetween(31.0, 44.0);
              assertThat(active.cutPercent()).isCloseTo(9, within(0.5));
              assertThat(active.loss().orElseThrow().kilowatts()).isCloseTo(19.1, within(0.1));
              assertThat(active.loss().orElseThrow().newtonMetres()).isCloseTo(91, within(0.5));
            });
  }

  @Test
  void itEndsWhenTheFuelIsBack() {
    flooredAt(48).forSeconds(30).to(Channels.FUEL_RATE, 42, 10).forSeconds(20);
    assertThat(story.latest()).isInstanceOf(Derate.Active.class);
    story.to(Channels.FUEL_RATE, 48, 5).forSeconds(8);
    assertThat(story.latest()).isEqualTo(new Derate.None());
  }

  @Test
  void theSameAtNoHotChannelIsNothing() {
    story.chargeAir(90);
    flooredAt(48).forSeconds(30).to(Channels.FUEL_RATE, 43.2, 10).forSeconds(60);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void engineLoadTellsItToo() {
    story.says(Channels.ACCELERATOR_PEDAL, 100).says(Channels.ENGINE_LOAD, 100).forSeconds(30);
    story.to(Channels.ENGINE_LOAD, 88, 10).forSeconds(6);
    assertThat(story.latest()).isInstanceOf(Derate.Active.class);
  }

  @Test
  void aFootThatEasesIsNoDerate() {
    flooredAt(48).forSeconds(30).pedalAndFuel(85, 41).forSeconds(60);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void aFootThatStaysHalfwayAtTheSameSpeedIsOneIfFuelFalls() {
    story.pedalAndFuel(85, 44).forSeconds(30).to(Channels.FUEL_RATE, 39, 10).forSeconds(6);
    assertThat(story.latest()).isInstanceOf(Derate.Active.class);
  }

  @Test
  void boostThatBuildsIsNoDerate() {
    flooredAt(48).forSeconds(30).pedalAndFuel(20, 12).forSeconds(15);
    flooredAt(36).forSeconds(1).says(Channels.FUEL_RATE, 42).forSeconds(3);
    story.says(Channels.FUEL_RATE, 48).forSeconds(10);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  /** Most diesels of tow vehicles are governed near 3300 r/min (common practice, no source). */
  @Test
  void anEngineAtItsRatedEndGivesLess() {
    story.speed(116);
    flooredAt(60).forSeconds(30);
    for (int i = 0; i < 10; i++) {
      story.speed(117 + 2 * i).says(Channels.FUEL_RATE, 60 - 1.2 * i).forSeconds(3);
    }
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void thinAirTakesFuelWithThePressure() {
    story.says(Channels.BAROMETRIC_PRESSURE, 95);
    flooredAt(48).forSeconds(30);
    for (int fallen = 1; fallen <= 10; fallen++) {
      story.says(Channels.BAROMETRIC_PRESSURE, 95 - fallen);
      flooredAt(48 * (1 - fallen / 95.0)).forSeconds(30);
    }
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void aLowerGearBurnsLessATurn() {
    flooredAt(48).forSeconds(30);
    story.says(Channels.ENGINE_SPEED, 2700).says(Channels.FUEL_RATE, 52).forSeconds(30);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  /** The same power in a lower gear is short of what a higher one gave. */
  @Test
  void aDerateGoesOnInALowerGear() {
    flooredAt(48).forSeconds(30).to(Channels.FUEL_RATE, 42, 10).forSeconds(10);
    story.says(Channels.ENGINE_SPEED, 2700).says(Channels.FUEL_RATE, 43).forSeconds(60);
    assertThat(story.latest()).isInstanceOf(Derate.Active.class);
  }

  /** Fuel is told less often than engine speed. */
  @Test
  void fuelThatIsToldAfterTheGearHasChangedIsNoPull() {
    story.says(Channels.ENGINE_SPEED, 2700);
    flooredAt(54).forSeconds(30);
    story.says(Channels.ENGINE_SPEED, 2000).forSeconds(3);
    story.says(Channels.FUEL_RATE, 43).forSeconds(60);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void aFootThatAsksForLittleIsNotWaitingForPower() {
    story.pedalAndFuel(40, 25).forSeconds(30).says(Channels.FUEL_RATE, 20).forSeconds(60);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void aSpeedLimiterHoldsTheSpeedThatWasReached() {
    flooredAt(48).forSeconds(20);
    for (int speed = 81; speed <= 90; speed++) {
      story.speed(speed).says(Channels.FUEL_RATE, 48 + (speed - 80) * 0.6).forSeconds(1);
    }
    story.says(Channels.FUEL_RATE, 40).forSeconds(60);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  /** Under cruise control the pedal reads zero. */
  @Test
  void powerThatFallsWithTheSpeedUnderCruiseControlIsADerate() {
    cruising();
    slowing(10, 48, 38);
    assertThat(story.latest()).isInstanceOf(Derate.Active.class);
  }

  @Test
  void withoutHeatItIsNot() {
    story.chargeAir(90);
    cruising();
    slowing(20, 48, 36);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void aCruiseControlThatEasesAtACrestIsNone() {
    cruising();
    story.to(Channels.FUEL_RATE, 30, 12).forSeconds(30);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void aCruiseControlThatIsSetLowerIsNone() {
    cruising();
    story.says(Channels.FUEL_RATE, 6).forSeconds(2);
    slowing(10, 6, 6);
    story.says(Channels.FUEL_RATE, 38).forSeconds(30);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void aCruiseControlThatIsSetALittleLowerIsNone() {
    cruising();
    story.says(Channels.FUEL_RATE, 38).forSeconds(3);
    slowing(6, 38, 38);
    story.forSeconds(30);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void aReadingBetweenTwoStepsIsNoSpeedThatFalls() {
    cruising();
    for (int i = 0; i < 6; i++) {
      story.says(Channels.FUEL_RATE, 47 - 1.5 * i);
      story.says(Channels.VEHICLE_SPEED, 79).forSeconds(5);
      story.says(Channels.VEHICLE_SPEED, 80).forSeconds(5);
    }
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void aLowerSpeedThatStaysAsksForNoMore() {
    cruising();
    slowing(5, 48, 48);
    story.forSeconds(10).to(Channels.FUEL_RATE, 36, 20).forSeconds(10);
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  @Test
  void moreSpeedLostAtUnchangedPowerIsAGradeAndNoDerate() {
    cruising();
    for (int speed = 79; speed >= 70; speed--) {
      // the same torque turns more slowly, and so burns less
      story.speed(speed).says(Channels.FUEL_RATE, 48.0 * speed / 80).forSeconds(3);
    }
    assertThat(story.said()).containsOnly(new Derate.None());
  }

  private void cruising() {
    story.pedalAndFuel(0, 48).forSeconds(40);
  }

  /** A kilometre an hour every two seconds. */
  private void slowing(int kilometresPerHour, double fromFuel, double toFuel) {
    for (int i = 1; i <= kilometresPerHour; i++) {
      double share = (double) i / kilometresPerHour;
      double turning = (80.0 - i) / 80;
      story
          .speed(80 - i)
          .says(Channels.FUEL_RATE, (fromFuel + (toFuel - fromFuel) * share) * turning)
          .forSeconds(2);
    }
  }
}
