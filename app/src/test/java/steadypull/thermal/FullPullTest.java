package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.LatestSamples;

/** The most that an engine gives; torques at 2000 r/min, on the plateau of any turbo-diesel. */
class FullPullTest {
  private static final double RPM = 2000;
  private static final double REFERENCE = 800;

  /** Share of the reference that friction takes, as the power at the crankshaft has it. */
  private static final double FRICTION_PERCENT = 8;

  private final FullPull pull = new FullPull();
  private final LatestSamples samples = new LatestSamples();
  private int second;

  private void told(Channel channel, double value) {
    samples.accept(new Sample(channel, second * 1_000_000L, value));
  }

  /** Some seconds of a torque at the crankshaft. */
  private void drive(int seconds, double newtonMetres, double pedal, boolean isHot) {
    for (int until = second + seconds; second < until; second++) {
      told(Channels.REFERENCE_TORQUE, REFERENCE);
      told(Channels.ACCELERATOR_PEDAL, pedal);
      double indicated = newtonMetres / REFERENCE * 100 + FRICTION_PERCENT;
      told(Channels.DELIVERED_TORQUE, indicated);
      Load load = new Load(newtonMetres * RPM / 9549.297, RPM, 20, 300, 0.15, 20);
      pull.accept(
          new DriveMoment(
              samples,
              second * 1_000_000L,
              Optional.of(load),
              Optional.empty(),
              OptionalDouble.empty(),
              isHot),
          1);
    }
  }

  private double most() {
    return pull.guess().newtonMetres();
  }

  @Test
  void ofAnEngineThatHasShownNothingAUsualShareOfTheReferenceIsExpected() {
    drive(5, 200, 30, false);
    assertThat(most()).isBetween(0.75 * REFERENCE, 0.92 * REFERENCE);
    assertThat(pull.guess().spread()).isBetween(0.05, 0.1);
  }

  @Test
  void thePedalOnTheFloorShowsIt() {
    drive(40, 600, 100, false);
    assertThat(most()).isCloseTo(600, within(10.0));
    assertThat(pull.guess().spread()).isLessThan(0.03);
    assertThat(pull.kilowatts(RPM)).isCloseTo(600 * RPM / 9549.297, within(3.0));
  }

  /** Half load by the engine's word, indicated: 8 % of friction included on both sides. */
  @Test
  void theEnginesWordOfItsLoadTellsItBeforeAnyFullPull() {
    for (int i = 0; i < 60; i++) {
      double wholePercent = 98;
      double net = REFERENCE * (0.5 * wholePercent - FRICTION_PERCENT) / 100;
      told(Channels.ENGINE_LOAD, 50);
      drive(1, net, 40, false);
    }
    assertThat(most()).isCloseTo(0.9 * REFERENCE, within(12.0));
  }

  @Test
  void aWordThatContradictsItselfIsBarelyBelieved() {
    for (int i = 0; i < 120; i++) {
      told(Channels.ENGINE_LOAD, 50 + 30 * (i % 2));
      drive(1, 300, 40, false);
    }
    assertThat(pull.guess().spread()).isGreaterThan(0.05);
  }

  /** Else a plan would take a derated climb for the next one's most, and never warn of it. */
  @Test
  void whatHeatTakesAwayIsNotTheMostThatThereIs() {
    drive(40, 600, 100, false);
    drive(60, 420, 100, true);
    assertThat(most()).isCloseTo(600, within(10.0));
  }

  @Test
  void torqueAskedForAndNotGivenIsNotTheMostThatThereIs() {
    drive(40, 600, 100, false);
    for (int i = 0; i < 60; i++) {
      told(Channels.DEMANDED_TORQUE, 85);
      drive(1, 420, 100, false);
    }
    assertThat(most()).isCloseTo(600, within(10.0));
    assertThat(pull.isGivingAll()).isTrue();
  }

  @Test
  void whatWasSeenIsTheLeast() {
    drive(30, 790, 60, false);
    assertThat(most()).isGreaterThan(780);
  }

  @Test
  void anEngineAtHalfItsMostLeavesTheSpeedToItsDriver() {
    drive(10, 330, 45, false);
    assertThat(pull.isGivingAll()).isFalse();
    drive(1, 330, 100, false);
    assertThat(pull.isGivingAll()).isTrue();
  }

  @Test
  void slowAndFastAnEngineGivesLess() {
    drive(40, 600, 100, false);
    assertThat(pull.kilowatts(1000)).isLessThan(0.7 * 600 * 1000 / 9549.297);
    assertThat(pull.kilowatts(4200)).isLessThan(0.4 * 600 * 4200 / 9549.297);
  }

  // P = T n / 9549.3: 0.84 * 800 = 672 N.m are 103.4 kW at 1470 r/min and 130 kW at 1847 r/min.
  @Test
  void morePowerThanAGearGivesIsGivenInALowerOne() {
    drive(1, 100, 30, false);
    assertThat(pull.rpmFor(90, 1470)).isEqualTo(1470);
    assertThat(pull.rpmFor(130, 1470)).isCloseTo(1847.3, within(0.5));
  }
}
