package steadypull.channel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitConversionTest {
  /**
   * Exact by definition: the International Yard and Pound Agreement of 1959 fixes foot, mile and
   * pound; BIPM, SI Brochure, 9th edition, 2019, kelvin, bar, hour; International Hydrographic
   * Conference, 1929, the nautical mile. From memory, apart from mile and degree, which stand in
   * our reference sheet. The tolerance is one rounding of a double.
   */
  @ParameterizedTest
  @CsvSource({
    "degF, degC, 212, 100",
    "degF, degC, 32, 0",
    "degF, degC, -40, -40",
    "K, degC, 273.15, 0",
    "K, degC, 373.15, 100",
    "mph, km/h, 1, 1.609344",
    "mi/h, km/h, 100, 160.9344",
    "m/s, km/h, 25, 90",
    "kn, km/h, 43.20, 80.0064",
    "bar, kPa, 1.1, 110",
    "mbar, kPa, 1013.25, 101.325",
    "Pa, kPa, 101325, 101.325",
    "ft, m, 1000, 304.8",
    "km, m, 1.5, 1500",
    "kg/h, g/s, 360, 100",
    "lb/min, g/s, 60, 453.59237",
    "rpm, r/min, 1850, 1850",
    "L/min, L/h, 0.5, 30",
    "mV, V, 13800, 13.8",
  })
  void unitsDefinedByAgreementConvertExactly(String from, String to, double given, double wanted) {
    assertThat(convert(from, to, given)).isCloseTo(wanted, within(Math.ulp(wanted)));
  }

  /**
   * Rounded figures as printed in tables, from memory of NIST Special Publication 811, 2008,
   * appendix B.8: 1 psi = 6.894757 kPa, 1 inHg (conventional) = 3.386389 kPa, 1 lbf.ft = 1.355818
   * N.m, 1 hp (550 ft.lbf/s) = 0.7456999 kW, metric horsepower 0.7354988 kW. The tolerance is half
   * a unit of the last printed digit.
   */
  @ParameterizedTest
  @CsvSource({
    "psi, kPa, 6.894757, 5e-7",
    "inHg, kPa, 3.386389, 5e-7",
    "lbf.ft, N.m, 1.355818, 5e-7",
    "hp, kW, 0.7456999, 5e-8",
    "PS, kW, 0.7354988, 5e-8",
  })
  void derivedFactorsAgreeWithPrintedOnes(String from, String to, double printed, double within) {
    assertThat(convert(from, to, 1)).isCloseTo(printed, within(within));
  }

  @Test
  void aValueInItsOwnUnitKeepsEveryBit() {
    for (double value : new double[] {0.1, 1e-300, 123.45678901234568, Double.MAX_VALUE}) {
      assertThat(convert("degC", "degC", value)).isEqualTo(value);
      assertThat(convert("rpm", "r/min", value)).isEqualTo(value);
      assertThat(convert("widgets", "widgets", value)).isEqualTo(value);
    }
  }

  @Test
  void everyKnownChannelTakesItsOwnUnit() {
    assertThat(Channels.all())
        .allSatisfy(
            channel ->
                assertThat(UnitConversion.unitsFor(channel.unit()))
                    .first()
                    .isEqualTo(channel.unit()));
  }

  @Test
  void unitsWithAnOpenMeaningAreNotGuessed() {
    assertThat(UnitConversion.between("psig", "kPa")).isEmpty();
    assertThat(UnitConversion.between("gal/h", "L/h")).isEmpty();
    assertThat(UnitConversion.between("kPa", "degC")).isEmpty();
    assertThat(UnitConversion.between("degF", "widgets")).isEmpty();
  }

  private static double convert(String from, String to, double value) {
    return UnitConversion.between(from, to).orElseThrow().apply(value);
  }
}
