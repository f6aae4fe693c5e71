package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ChargeAirHeatTest {
  private static final double EXPONENT = 0.4 / 1.4;

  // Heywood's formula with k = 1.4, computed by hand: 25 degC, ratio 2.0 at 0.70 makes 118.28 degC;
  // 38 degC and 2.5 at 0.72 make 167.33 degC.
  @Test
  void theCompressorHeatsAsItsFormulaSays() {
    assertThat(inletOf(25, 2.0, 0.70)).isCloseTo(118.28, within(0.02));
    assertThat(inletOf(38, 2.5, 0.72)).isCloseTo(167.33, within(0.02));
  }

  /** Air before the cooler, from what a cooler that takes half lets out. */
  private static double inletOf(double celsius, double ratio, double efficiency) {
    double charge = 330;
    var heat = new ChargeAirHeat(0.3, celsius + 273.15, Math.pow(ratio, EXPONENT) - 1, charge, 0.5);
    double store = 2 * (charge - 273.15) - estimate(celsius, ratio, efficiency);
    return 2 * heat.outCelsius(store, efficiency) - store;
  }

  private static double estimate(double celsius, double ratio, double efficiency) {
    double kelvin = celsius + 273.15;
    return kelvin * (1 + (Math.pow(ratio, EXPONENT) - 1) / efficiency) - 273.15;
  }

  // q = m cp (T2 - T3): 0.30 kg/s from 170 to 62 degC is 32.69 kW with cp 1009, here 1011.
  @Test
  void theHeatIsWhatTheAirLoses() {
    double effectiveness = (170.0 - 62) / (170 - 38);
    double heats = 0.70 * (170.0 - 38) / (38 + 273.15);
    var heat = new ChargeAirHeat(0.30, 38 + 273.15, heats, 62 + 273.15, effectiveness);

    assertThat(heat.watts(38, 0.70)).isCloseTo(32_690 * 1011.0 / 1009, within(30.0));
    assertThat(heat.outCelsius(38, 0.70)).isCloseTo(62, within(0.1));
  }

  // A colder charge needs less boost for the same air, so that the compressor heats it less: a
  // store
  // that is 20 K colder takes less than 20 K more from the air.
  @Test
  void colderWaterGetsLessHeatThanItsTemperatureAloneSays() {
    var heat = new ChargeAirHeat(0.25, 310, 0.3, 330, 0.85);
    double more = heat.watts(30, 0.70) - heat.watts(50, 0.70);

    assertThat(more).isBetween(0.4 * 0.85 * 0.25 * 1011 * 20, 0.75 * 0.85 * 0.25 * 1011 * 20);
  }

  @Test
  void airNeverLeavesColderThanTheWaterThatEnters() {
    var heat = new ChargeAirHeat(0.25, 310, 0.3, 330, 0.95).taking(0.2);

    assertThat(heat.outCelsius(60, 0.70)).isGreaterThan(60);
  }
}
