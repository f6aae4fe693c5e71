package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LoadTest {
  private static final double[] CIRCUIT = {30_000, 300, 0.35, 0, 8};
  private static final double[] ENGINE = {140_000, 0.2, 85, 1700, 0.3, 99, 10};

  // Standard atmosphere (ISO 2533:1975): degC and kPa at 0, 1000, 2000 and 3000 m. Common practice,
  // no source: the conductance of a vehicle's cooler falls by 5 to 8 % per 1000 m.
  @ParameterizedTest
  @CsvSource({
    "15.00, 101.325, 8.50, 89.875",
    "8.50, 89.875, 2.00, 79.495",
    "2.00, 79.495, -4.50, 70.109"
  })
  void conductanceFallsWithAltitude(
      double celsius, double kilopascals, double higherCelsius, double higherKilopascals) {
    Load low = new Load(100, 2000, 25, 260, 0.15, celsius, kilopascals);
    Load high = new Load(100, 2000, 25, 260, 0.15, higherCelsius, higherKilopascals);
    assertThat(circuit(high) / circuit(low)).isBetween(0.92, 0.95);
    assertThat(engine(high) / engine(low)).isBetween(0.92, 0.95);
  }

  // Kays and London, Compact Heat Exchangers: exponent 0.5 to 0.7 on the speed; half of it leaves
  // 0.62 to 0.71 of the part that the wind makes.
  @Test
  void conductanceFollowsRoadSpeed() {
    double standing = circuit(at(0)) / circuit(at(25));
    assertThat(standing).isCloseTo(CIRCUIT[2], within(1e-9));
    double half = circuit(at(12.5)) / circuit(at(25));
    assertThat((half - standing) / (1 - standing)).isBetween(0.61, 0.71);
  }

  @Test
  void anEngagedFanAddsItsShare() {
    assertThat(conductance(108, at(12)) / conductance(98, at(12))).isBetween(1.2, 1.6);
  }

  private static Load at(double metresPerSecond) {
    return new Load(100, 2000, metresPerSecond, 260, 0.15, 20);
  }

  /** W/K: what one kelvin more takes out of the circuit. */
  private static double circuit(Load load) {
    double[] around = new double[Store.COUNT];
    ChargeCoolant circuit = new ChargeCoolant();
    double cooler = circuit.kelvinPerSecond(60, CIRCUIT, load, around);
    return CIRCUIT[0] * (cooler - circuit.kelvinPerSecond(61, CIRCUIT, load, around));
  }

  /** W/K of the engine's radiator, wide open and without fan; block and hoses left out. */
  private static double engine(Load load) {
    return conductance(97, load) - 60;
  }

  private static double conductance(double celsius, Load load) {
    double heat = ENGINE[1] * load.fuelKilowatts() * 1000;
    double rate =
        new EngineCoolant().kelvinPerSecond(celsius, ENGINE, load, new double[Store.COUNT]);
    return (heat - rate * ENGINE[0]) / (celsius - load.outsideCelsius());
  }
}
