package steadypull.vehicle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

class CoolantBoilingTest {
  /** IAPWS-IF97 (Revised Release, 2007), table 36: MPa and kelvin, as printed; from memory. */
  @ParameterizedTest
  @CsvSource({"0.1, 372.755919", "1, 453.035632", "10, 584.149488"})
  void waterBoilsWhereTheFormulationSays(double megapascals, double kelvin) {
    assertThat(CoolantBoiling.waterCelsius(megapascals * 1000) + 273.15)
        .isCloseTo(kelvin, within(1e-6));
  }

  /** Sources for 50/50 by volume without a cap have 223 to 226 degF, 106 to 108 degC. */
  @Test
  void withoutACapTheMixtureBoilsWhereSourcesHaveIt() {
    assertThat(new PressureCap(0, owner()).boilingCelsius(101.325)).isBetween(106.0, 108.0);
  }

  /** A cap of 15 psi (1.034 bar) and 265 degF (129.4 degC) is the published figure; 2 K apart. */
  @Test
  void underTheUsualAmericanCapItBoilsNearThePublishedFigure() {
    assertThat(new PressureCap(1.034, owner()).boilingCelsius(101.325))
        .isCloseTo(129.4, within(1.0));
  }

  /**
   * By height and cap, computed by another program from the same scaling of water's vapour
   * pressure; it rounds to 0.1 K.
   */
  @ParameterizedTest
  @CsvSource({
    "101.3, 0, 107.2", "101.3, 1.0, 128.6", "101.3, 1.1, 130.2", "101.3, 1.4, 134.7",
    "89.9, 0, 103.7", "89.9, 1.1, 128.4", "79.5, 0, 100.2", "79.5, 1.0, 124.8",
    "79.5, 1.2, 128.3", "70.1, 0, 96.8", "70.1, 1.1, 124.9", "70.1, 1.4, 130.0"
  })
  void heightTakesFromTheBoilingPoint(double kilopascals, double bar, double celsius) {
    assertThat(new PressureCap(bar, owner()).boilingCelsius(kilopascals))
        .isCloseTo(celsius, within(0.15));
  }

  /** 50.1 kPa over 79.5 at 2000 m: boils at 114.7 less 8. */
  @Test
  void aWeakCapLowersTheLimitAndSaysWhy() {
    Vehicle vehicle =
        Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR)
            .withCap(new PressureCap(0.5, new Provenance(Provenance.Kind.WORKSHOP, "stamped")));
    Limit counts = vehicle.limit(Channels.ENGINE_COOLANT_TEMP, 79.5).orElseThrow();
    assertThat(counts.celsius()).isCloseTo(107.0, within(0.6));
    assertThat(counts.provenance().kind()).isEqualTo(Provenance.Kind.WORKSHOP);
    assertThat(counts.provenance().note())
        .isEqualTo("boils at 115 degC at this height, cap 0.5 bar: 107 counts");
    assertThat(vehicle.limit(Channels.ENGINE_COOLANT_TEMP, 101.3).orElseThrow().celsius())
        .as("at sea level")
        .isCloseTo(111.3, within(0.6));
  }

  @Test
  void aLimitUnderBoilingStaysAsItWasEntered() {
    Vehicle vehicle = Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR);
    assertThat(vehicle.limit(Channels.ENGINE_COOLANT_TEMP, 70.1))
        .isEqualTo(vehicle.limit(Channels.ENGINE_COOLANT_TEMP));
  }

  @Test
  void onlyEngineCoolantBoils() {
    Vehicle vehicle =
        Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR)
            .withCap(new PressureCap(0, owner()));
    for (Channel channel : Channels.thermal()) {
      if (!channel.equals(Channels.ENGINE_COOLANT_TEMP)) {
        assertThat(vehicle.limit(channel, 70)).isEqualTo(vehicle.limit(channel));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.1, 3.1, Double.NaN})
  void aCapHoldsNoOtherPressures(double bar) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new PressureCap(bar, owner()))
        .withMessageContaining("0 to 3 bar");
  }

  private static Provenance owner() {
    return new Provenance(Provenance.Kind.OWNER, "");
  }
}
