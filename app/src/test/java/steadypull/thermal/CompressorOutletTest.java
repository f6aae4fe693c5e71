package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CompressorOutletTest {
  private static final double LITRES = 4;
  private static final double RPM = 2400;
  private static final double CHARGE_CELSIUS = 60;
  private static final double LAG_SECONDS = 12;

  // T2 = T1 (1 + (r^((k-1)/k) - 1) / eta), k = 1.4, T in K (Heywood, Internal Combustion Engine
  // Fundamentals, chapter 6); the outlets were computed from it by hand. Tolerance: their last
  // digit.
  @ParameterizedTest
  @CsvSource({
    "20, 3.0, 1.00, 101.325, 128.10",
    "25, 2.0, 0.70, 101.325, 118.28",
    "38, 2.5, 0.72, 101.4, 167.33",
    "38, 3.0, 0.70, 84.5, 201.90",
    // The altitude does not matter by itself, only the ratio.
    "25, 2.0, 0.70, 70.109, 118.28"
  })
  void theOutletSettlesWhereTheCompressorFormulaSays(
      double inlet, double ratio, double efficiency, double kilopascals, double outlet) {
    double air = airFor(ratio * kilopascals);
    assertThat(settled(efficiency, RPM, air, inlet, kilopascals)).isCloseTo(outlet, within(0.006));
  }

  // 253.5 kPa in the manifold are 2.5 times the air of 101.4 kPa but 3.0 times that of 84.5 kPa
  // (1500 m): 167.3 becomes, with the same efficiency of 0.72, 311.15 (1 + 0.36872 / 0.72) - 273.15
  // = 197.3 degC (computed).
  @Test
  void theSameBoostInThinnerAirIsHotter() {
    double air = airFor(253.5);
    assertThat(settled(0.72, RPM, air, 38, 101.4)).isCloseTo(167.33, within(0.006));
    assertThat(settled(0.72, RPM, air, 38, 84.5)).isCloseTo(197.34, within(0.02));
  }

  // The same air in a lower gear fills more, smaller gulps: less pressure.
  @Test
  void theSameAirInALowerGearIsCooler() {
    double air = airFor(253.5);
    assertThat(settled(0.72, RPM * 1.3, air, 38, 101.4))
        .isLessThan(settled(0.72, RPM, air, 38, 101.4) - 20);
  }

  @Test
  void anEngineThatHardlyBreathesDoesNotCoolItsAir() {
    assertThat(settled(0.7, 700, 0.002, 20, 101.325)).isCloseTo(20, within(0.01));
  }

  // First-order lag: 1 - 1/e of the way after one time constant.
  @Test
  void theOutletFollowsWithItsLag() {
    Load load = new Load(100, RPM, 20, 250, airFor(253.5), 38, 101.4);
    double[] parameters = {LITRES, 0.72, 0, LAG_SECONDS};
    double after = new CompressorOutlet().step(38, parameters, load, around(), 0, LAG_SECONDS);
    assertThat(after).isCloseTo(38 + (167.33 - 38) * (1 - Math.exp(-1)), within(0.01));
  }

  /** Air flow that fills the manifold to a pressure: p V n / 2 / (R T), kg/s. */
  private static double airFor(double manifoldKilopascals) {
    return manifoldKilopascals
        * 1000
        * (LITRES / 1000 * RPM / 120)
        / (287.05287 * (CHARGE_CELSIUS + 273.15));
  }

  private static double settled(
      double efficiency, double rpm, double air, double inletCelsius, double kilopascals) {
    Load load = new Load(100, rpm, 20, 250, air, inletCelsius, kilopascals);
    double[] parameters = {LITRES, efficiency, 0, LAG_SECONDS};
    return new CompressorOutlet().step(100, parameters, load, around(), 0, 1e4);
  }

  private static double[] around() {
    double[] around = new double[Store.COUNT];
    around[Store.CHARGE_AIR.index()] = CHARGE_CELSIUS;
    return around;
  }
}
