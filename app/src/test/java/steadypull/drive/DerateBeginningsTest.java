package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.DerateBegun;
import steadypull.vehicle.Limit;
import steadypull.vehicle.PressureCap;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.Vehicle;

/** Where torque began to be taken away, second by second. */
class DerateBeginningsTest {
  private static final Vehicle VEHICLE =
      Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR)
          .withLimit(
              new Limit(
                  Channels.CHARGE_COOLANT_TEMP, 100, new Provenance(Provenance.Kind.WORKSHOP, "")));

  /** What other channels say at a second at which the charge coolant has a temperature. */
  private interface Besides {
    double celsius(Channel channel, double chargeCoolant);
  }

  /**
   * Charge coolant rises by 0.1 K a second from 80 degC; from a temperature on the control unit
   * takes 3 points of torque a kelvin.
   */
  private static List<DerateBegun> begun(double from, Besides besides) {
    DerateBeginnings beginnings = new DerateBeginnings(VEHICLE);
    for (int second = 1; second <= 300; second++) {
      double celsius = 80 + 0.1 * second;
      double cut = Math.max(0, 3 * (celsius - from));
      List<Sample> samples = new ArrayList<>();
      long micros = second * 1_000_000L - 300_000;
      samples.add(new Sample(Channels.DEMANDED_TORQUE, micros, 80));
      samples.add(new Sample(Channels.DELIVERED_TORQUE, micros, 80 - cut));
      samples.add(new Sample(Channels.CHARGE_COOLANT_TEMP, micros, Math.rint(celsius)));
      for (Channel channel : List.of(Channels.CHARGE_AIR_TEMP_OUT, Channels.ENGINE_COOLANT_TEMP)) {
        samples.add(new Sample(channel, micros, besides.celsius(channel, celsius)));
      }
      samples.forEach(beginnings::accept);
    }
    return beginnings.begun();
  }

  private static double cool(Channel channel, double chargeCoolant) {
    return 70;
  }

  /** Five points at 3 a kelvin are 1.7 K after the beginning; the sensor rounds. */
  @Test
  void aDerateThatBeginsBelowTheEnteredLimitIsFoundWhereItBegan() {
    assertThat(begun(95, DerateBeginningsTest::cool))
        .singleElement()
        .satisfies(
            derate -> {
              assertThat(derate.channelId()).isEqualTo("charge_coolant_temp");
              assertThat(derate.celsius()).isBetween(96.0, 98.0);
              assertThat(derate.alsoHot()).isEmpty();
            });
  }

  @Test
  void soIsOneThatBeginsAboveIt() {
    assertThat(begun(104, DerateBeginningsTest::cool))
        .singleElement()
        .satisfies(derate -> assertThat(derate.celsius()).isBetween(105.0, 107.0));
  }

  @Test
  void farFromEveryLimitLessTorqueIsNoDerate() {
    assertThat(begun(82, (_, _) -> 60)).noneMatch(derate -> derate.celsius() < 88);
  }

  /**
   * A cap that holds nothing any more at 70.1 kPa (3000 m, ISO 2533): the coolant boils at 97 degC
   * and counts as over its limit from 89 on, though 112 was entered. At the sea it counts from 99
   * on.
   */
  @ParameterizedTest
  @CsvSource({"70.1, true", "101.3, false"})
  void coolantThatMayBoilIsLookedAtBelowTheLimitThatWasEntered(double kilopascals, boolean isHot) {
    DerateBeginnings beginnings =
        new DerateBeginnings(
            VEHICLE.withCap(new PressureCap(0, new Provenance(Provenance.Kind.OWNER, ""))));
    for (int second = 1; second <= 60; second++) {
      long micros = second * 1_000_000L - 300_000;
      beginnings.accept(new Sample(Channels.BAROMETRIC_PRESSURE, micros, kilopascals));
      beginnings.accept(new Sample(Channels.DEMANDED_TORQUE, micros, 80));
      beginnings.accept(new Sample(Channels.DELIVERED_TORQUE, micros, second < 40 ? 80 : 70));
      beginnings.accept(new Sample(Channels.ENGINE_COOLANT_TEMP, micros, 82));
      beginnings.accept(new Sample(Channels.CHARGE_COOLANT_TEMP, micros, 91));
    }

    assertThat(beginnings.begun())
        .singleElement()
        .satisfies(
            derate ->
                assertThat(derate.alsoHot())
                    .isEqualTo(isHot ? List.of("charge_coolant_temp") : List.of()));
  }

  @Test
  void anotherChannelAsNearToItsLimitIsTold() {
    List<DerateBegun> begun =
        begun(
            95,
            (channel, celsius) -> channel.equals(Channels.CHARGE_AIR_TEMP_OUT) ? celsius + 4 : 80);

    assertThat(begun).hasSize(1);
    assertThat(begun.getFirst().alsoHot()).containsExactly("charge_air_temp_out");
  }
}
