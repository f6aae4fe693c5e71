package steadypull.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.TroubleCodes;
import steadypull.vehicle.Vehicle;

class DeratedSecondsTest {
  private static final TimeSpan ALL = TimeSpan.ofSeconds(0, 100);

  private final DriveTrace trace =
      new DriveTrace(Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR));
  private int second;

  /** Cut from second 41 to 60, and told with the first second at which it was back, 61. */
  @Test
  void aDerateCountsFromItsBeginning() {
    pull(40, 0);
    pull(20, 10);
    pull(40, 0);
    assertThat(trace.deratedSeconds(ALL).orElseThrow()).isBetween(20.0, 23.0);
  }

  @Test
  void secondsThatAFaultExplainsAreNotDerated() {
    pull(40, 0);
    trace.accept(fault(OptionalLong.of(40_000_000)), 40_000_000);
    pull(60, 10);
    assertThat(trace.deratedSeconds(ALL)).hasValue(0);
  }

  /** Codes are asked for once a minute. */
  @Test
  void aFaultThatIsToldLateTakesThemBack() {
    pull(40, 0);
    pull(40, 10);
    trace.accept(fault(OptionalLong.of(80_000_000)), 80_000_000);
    pull(20, 10);
    assertThat(trace.deratedSeconds(ALL)).hasValue(0);
  }

  @Test
  void aCodeOfLastWeekTakesNothing() {
    trace.accept(fault(OptionalLong.empty()), 0);
    pull(40, 0);
    pull(60, 10);
    assertThat(trace.deratedSeconds(ALL).orElseThrow()).isBetween(58.0, 60.0);
  }

  @Test
  void withoutTorquePedalAndPowerTellThem() {
    say(Channels.BAROMETRIC_PRESSURE, 98);
    burn(40, 48);
    burn(60, 42);
    assertThat(trace.deratedSeconds(ALL).orElseThrow()).isBetween(50.0, 60.0);
  }

  private void pull(int seconds, double cut) {
    for (int i = 0; i < seconds; i++) {
      second++;
      say(Channels.CHARGE_AIR_TEMP_OUT, 107);
      say(Channels.DEMANDED_TORQUE, 90);
      say(Channels.DELIVERED_TORQUE, 90 - cut);
    }
    say(Channels.MODULE_VOLTAGE, 14);
  }

  private void burn(int seconds, double litresPerHour) {
    for (int i = 0; i < seconds; i++) {
      second++;
      say(Channels.BAROMETRIC_PRESSURE, 98);
      say(Channels.CHARGE_AIR_TEMP_OUT, 107);
      say(Channels.ACCELERATOR_PEDAL, 100);
      say(Channels.ENGINE_SPEED, 2000);
      say(Channels.VEHICLE_SPEED, 80);
      say(Channels.FUEL_RATE, litresPerHour);
    }
  }

  /** Half a second before the tick that shall see it. */
  private void say(Channel channel, double value) {
    trace.accept(new Sample(channel, Math.max(0, second * 1_000_000L - 500_000), value));
  }

  private static TroubleCodes fault(OptionalLong cameUpMicros) {
    return new TroubleCodes(
        Set.of(TroubleCodes.Status.STORED),
        List.of(
            new TroubleCodes.Code(
                "P0299", Optional.empty(), TroubleCodes.Status.STORED, "7E8", cameUpMicros)));
  }
}
