package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.TroubleCodes;

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

  // The story of limp mode: nothing is hot, a fault is stored, power stays down.
  @Test
  void aStoredFaultExplainsPowerThatIsDownAtNoHotChannel() {
    drive(20, 90, 90);
    detector.accept(stored("P0299", OptionalLong.empty()));
    drive(5, 90, 75);
    assertThat(latest()).isEqualTo(new Derate.None());
    drive(2, 90, 75);
    assertThat(latest()).isEqualTo(new Derate.PowerLimited(21_000_000, 15));
  }

  @Test
  void withoutACodeTheSameIsNothingYet() {
    drive(20, 90, 90);
    detector.accept(new TroubleCodes(Set.of(TroubleCodes.Status.STORED), List.of()));
    drive(15, 90, 75);
    assertThat(said).containsOnly(new Derate.None());
  }

  /** P0420 is the catalyst's efficiency, C0123 and B1234 are chassis and body. */
  @ParameterizedTest
  @ValueSource(strings = {"P0420", "C0123", "B1234", "P0217"})
  void aCodeThatTakesNoPowerExplainsNothing(String code) {
    drive(20, 90, 90);
    detector.accept(stored(code, OptionalLong.empty()));
    drive(15, 90, 75);
    assertThat(said).containsOnly(new Derate.None());
  }

  // The story of a soft derate: hot, and easing brings the power back.
  @Test
  void anOldCodeDoesNotHideASoftDerate() {
    chargeAir = 106;
    detector.accept(stored("P0299", OptionalLong.empty()));
    drive(20, 90, 90);
    drive(6, 90, 80);
    assertThat(latest()).isInstanceOf(Derate.Active.class);
  }

  @Test
  void heatThatStoresACodeOfItsOwnIsStillASoftDerate() {
    chargeAir = 106;
    drive(20, 90, 90);
    detector.accept(stored("P0217", OptionalLong.of(20_000_000)));
    drive(6, 90, 80);
    assertThat(latest()).isInstanceOf(Derate.Active.class);
  }

  @Test
  void aFaultThatComesUpAtAHotChannelIsTheCause() {
    chargeAir = 106;
    drive(20, 90, 90);
    detector.accept(stored("P0299", OptionalLong.of(20_000_000)));
    drive(6, 90, 60);
    assertThat(latest()).isEqualTo(new Derate.PowerLimited(21_000_000, 30));
  }

  /** Codes are asked for once a minute: the fault may be told after the cut has begun. */
  @Test
  void aFaultThatIsToldDuringADerateTakesItsPlace() {
    chargeAir = 106;
    drive(20, 90, 90);
    drive(10, 90, 60);
    assertThat(latest()).isInstanceOf(Derate.Active.class);
    detector.accept(stored("P0299", OptionalLong.of(30_000_000)));
    drive(1, 90, 60);
    assertThat(latest()).isEqualTo(new Derate.PowerLimited(21_000_000, 30));
  }

  /** Whether a maker's own code takes power nobody here knows: heat is believed first. */
  @Test
  void aMakersCodeExplainsOnlyWhatHeatDoesNot() {
    drive(20, 90, 90);
    detector.accept(stored("P1234", OptionalLong.of(20_000_000)));
    drive(8, 90, 75);
    assertThat(latest()).isInstanceOf(Derate.PowerLimited.class);
    drive(10, 90, 90);
    chargeAir = 106;
    drive(8, 90, 75);
    assertThat(latest()).isInstanceOf(Derate.Active.class);
  }

  private static TroubleCodes stored(String code, OptionalLong cameUpMicros) {
    return new TroubleCodes(
        Set.of(TroubleCodes.Status.STORED),
        List.of(
            new TroubleCodes.Code(
                code, Optional.empty(), TroubleCodes.Status.STORED, "7E8", cameUpMicros)));
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
