package steadypull.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StandardAtmosphereTest {

  // ISO 2533:1975, Standard Atmosphere, tables by geopotential height; computed there from the
  // same formula, printed to the digits given.
  @ParameterizedTest
  @CsvSource({
    "0, 288.15, 101.325, 1.2250",
    "500, 284.90, 95.461, 1.1673",
    "1000, 281.65, 89.875, 1.1116",
    "1500, 278.40, 84.556, 1.0581",
    "2000, 275.15, 79.495, 1.0065",
    "2500, 271.90, 74.683, 0.9569",
    "3000, 268.65, 70.109, 0.9091",
    "4000, 262.15, 61.640, 0.8191",
    "5000, 255.65, 54.020, 0.7361"
  })
  void airFollowsTheTable(double metres, double kelvin, double kilopascals, double density) {
    assertThat(StandardAtmosphere.kelvin(metres)).isCloseTo(kelvin, within(0.005));
    double pressure = StandardAtmosphere.kilopascals(metres);
    assertThat(pressure).isCloseTo(kilopascals, within(0.0006));
    double celsius = kelvin - StandardAtmosphere.ZERO_CELSIUS_KELVIN;
    assertThat(StandardAtmosphere.density(pressure, celsius)).isCloseTo(density, within(0.00006));
  }

  // ISO 2533:1975, equation for geopotential height: 3000 m is 2998.6 m.
  @Test
  void geopotentialHeightIsALittleLess() {
    assertThat(StandardAtmosphere.geopotentialMetres(3000)).isCloseTo(2998.6, within(0.05));
  }

  // The inverse of the table, computed from the formula.
  @ParameterizedTest
  @CsvSource({"100, 110.9", "90, 988.5", "80, 1949.0", "70, 3012.2"})
  void pressureGivesTheHeight(double kilopascals, double metres) {
    assertThat(StandardAtmosphere.pressureAltitudeMetres(kilopascals))
        .isCloseTo(metres, within(0.05));
  }
}
