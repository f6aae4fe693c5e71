package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

class DerateDetectorTest {
  private final DerateDetector detector = new DerateDetector(TestVehicles.heavy());
  private final List<Derate> said = new ArrayList<>();
  private int second;
  private double chargeAir = 80;
  private double chargeCoolant = 60;

  @Test
  void torqueCutAtAHotChannelIsADerateFromItsBeginning() {
    chargeAir = 106;
    drive(20, 90, 90);
    drive(3, 90, 82);
    assertThat(latest()).isEqualTo(new Derate.None());
    drive(3, 90, 82);
    assertThat(latest()).isEqualTo(new Derate.Active(Channels.CHARGE_AIR_TEMP_OUT, 21_000_000, 8));
  }

  @Test
  void theCauseIsTheChannelFarthestOverItsLimit() {
    chargeAir = 106;
    chargeCoolant = 104;
    drive(20, 90, 90);
    drive(6, 90, 80);
    assertThat(latest())
        .isInstanceOfSatisfying(
            Derate.Active.class,
            active -> assertThat(active.cause()).isEqualTo(Channels.CHARGE_COOLANT_TEMP));
  }

  @Test
  void aDerateEndsWhenTheGapHasBeenClosedForThreeSeconds() {
    chargeAir = 106;
    drive(20, 90, 90);
    drive(10, 90, 80);
    drive(3, 90, 88);
    assertThat(latest()).isInstanceOf(Derate.Active.class);
    drive(2, 90, 88);
    assertThat(latest()).isEqualTo(new Derate.None());
  }

  @Test
  void aDerateLastsThoughTheChannelCoolsWhileTorqueIsCut() {
    chargeAir = 106;
    drive(20, 90, 90);
    drive(10, 90, 80);
    chargeAir = 95;
    drive(10, 90, 80);
    assertThat(latest()).isInstanceOf(Derate.Active.class);
  }

  @Test
  void aGearChangeCutIsNoDerate() {
    chargeAir = 106;
    drive(20, 90, 90);
    say(Channels.GEAR, 5);
    drive(1, 90, 90);
    say(Channels.GEAR, 4);
    drive(3, 90, 10);
    drive(5, 90, 90);
    assertThat(said).containsOnly(new Derate.None());
  }

  @Test
  void turboLagAfterAKickIsNoDerate() {
    chargeAir = 106;
    drive(20, 35, 35);
    for (int delivered = 40; delivered <= 90; delivered += 12) {
      drive(1, 90, delivered);
    }
    drive(5, 90, 90);
    assertThat(said).containsOnly(new Derate.None());
  }

  @Test
  void aLiftedFootIsNoDerate() {
    chargeAir = 106;
    drive(20, 90, 90);
    drive(20, 25, 8);
    assertThat(said).containsOnly(new Derate.None());
  }

  @Test
  void aSmallLastingGapAtNoHotChannelIsNothing() {
    drive(20, 90, 90);
    drive(120, 90, 82);
    assertThat(said).containsOnly(new Derate.None());
  }

  @Test
  void powerFarDownForLongAtNoHotChannelIsLimitedPower() {
    drive(20, 90, 90);
    drive(15, 90, 55);
    assertThat(latest()).isEqualTo(new Derate.None());
    drive(10, 90, 55);
    assertThat(latest()).isEqualTo(new Derate.PowerLimited(21_000_000, 35));
  }

  @Test
  void withoutDemandedTorqueNothingIsTold() {
    detector.accept(new Sample(Channels.DELIVERED_TORQUE, 1_000_000, 40));
    assertThat(detector.tick(1_000_000)).isEqualTo(new Derate.None());
  }

  private void drive(int seconds, double demanded, double delivered) {
    for (int i = 0; i < seconds; i++) {
      second++;
      say(Channels.DEMANDED_TORQUE, demanded);
      say(Channels.DELIVERED_TORQUE, delivered);
      say(Channels.CHARGE_AIR_TEMP_OUT, chargeAir);
      say(Channels.CHARGE_COOLANT_TEMP, chargeCoolant);
      said.add(detector.tick(second * 1_000_000L));
    }
  }

  private void say(Channel channel, double value) {
    detector.accept(new Sample(channel, second * 1_000_000L, value));
  }

  private Derate latest() {
    return said.getLast();
  }
}
