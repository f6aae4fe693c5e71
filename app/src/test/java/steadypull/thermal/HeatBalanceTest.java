package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.vehicle.CoolingLayout;

class HeatBalanceTest {
  private static final Load CLIMB = new Load(150, 2000, 25, 380, 0.2, 38);

  // First-order lag dT/dt = (Tinf - T) / tau with tau 240 s, from 98 to 112 degC:
  // t = tau ln((Tinf - 98) / (Tinf - 112)), computed from the closed form.
  @ParameterizedTest
  @CsvSource({"112.5, 808.2", "113, 649.9", "114, 499.1", "116, 361.0", "120, 242.8", "130, 138.1"})
  void theTimeToALimitOfAFirstOrderLagIsExact(double settles, double seconds) {
    double[] parameters = {0, 0, 240};
    double[] around = around(Store.ENGINE_COOLANT, settles);
    double[] secondsAhead = new double[201];
    double[] celsius = new double[201];
    celsius[0] = 98;
    for (int point = 1; point <= 200; point++) {
      secondsAhead[point] = point * 5;
      celsius[point] = new EngineOil().step(celsius[point - 1], parameters, CLIMB, around, 0, 5);
    }
    // Linear interpolation inside a 5 s step of a curve with tau 240 s is off by less than 0.1 s.
    assertThat(LimitCrossing.first(secondsAhead, celsius, 112).orElseThrow())
        .isCloseTo(seconds, within(0.12));
  }

  // The same closed form: with Tinf at or under the limit the time is "never".
  @Test
  void aTemperatureThatSettlesUnderItsLimitNeverMeetsIt() {
    double[] course = {98, 105, 109, 111, 111.9};
    assertThat(LimitCrossing.first(new double[] {0, 200, 400, 600, 800}, course, 112)).isEmpty();
  }

  @Test
  void oneLongStepOfALagEndsWhereManyShortOnesDo() {
    double[] parameters = {0, 0, 240};
    double[] around = around(Store.ENGINE_COOLANT, 120);
    double once = new EngineOil().step(98, parameters, CLIMB, around, 0, 600);
    assertThat(once).isCloseTo(120 - 22 * Math.exp(-600 / 240.0), within(1e-9));
  }

  // eps = 1 - exp(-NTU): column Cr = 0 of the effectiveness tables (Kays and London, Compact Heat
  // Exchangers; Incropera and DeWitt, ch. 11; computed from the formula).
  @ParameterizedTest
  @CsvSource({
    "0.25, 0.2212",
    "0.5, 0.3935",
    "1, 0.6321",
    "1.5, 0.7769",
    "2, 0.8647",
    "3, 0.9502",
    "5, 0.9933"
  })
  void effectivenessFollowsTransferUnits(double transferUnits, double effectiveness) {
    ChargeAir cooler = new ChargeAir(CoolingLayout.WATER_TO_AIR);
    assertThat(cooler.effectiveness(transferUnits, 0.6, CLIMB))
        .isCloseTo(effectiveness, within(0.00006));
  }

  // T2 170, T3 62, Tcold 38 degC is an effectiveness of 0.8182, from its definition.
  @Test
  void theOutletOfACoolerFollowsFromItsEffectiveness() {
    double[] around = around(Store.CHARGE_INLET, 170);
    around[Store.CHARGE_COOLANT.index()] = 38;
    double[] parameters = {-Math.log(1 - 0.8182), 0, 8, 0.6};
    double settled =
        new ChargeAir(CoolingLayout.WATER_TO_AIR).step(100, parameters, CLIMB, around, 0, 1e4);
    assertThat(settled).isCloseTo(62, within(0.01));
  }

  @Test
  void airNeverLeavesACoolerColderThanTheWaterThatEntersIt() {
    double[] around = around(Store.CHARGE_INLET, 45);
    around[Store.CHARGE_COOLANT.index()] = 60;
    double settled =
        new ChargeAir(CoolingLayout.WATER_TO_AIR)
            .step(60, new double[] {4, 0, 8, 0.6}, CLIMB, around, 0, 1e4);
    assertThat(settled).isBetween(45.0, 60.0);
    around[Store.CHARGE_INLET.index()] = 160;
    double hot =
        new ChargeAir(CoolingLayout.WATER_TO_AIR)
            .step(60, new double[] {4, 0, 8, 0.6}, CLIMB, around, 0, 1e4);
    assertThat(hot).isGreaterThan(60);
  }

  // 6 L of 50/50 coolant hold 1.04 kg/L * 3.5 kJ/(kg K) * 6 = 21.8 kJ/K (ASHRAE data), so that 13
  // kW
  // raise them by 0.6 K/s and no faster.
  @Test
  void aCircuitRisesNoFasterThanItsHeatAllows() {
    double[] around = around(Store.CHARGE_INLET, 155);
    around[Store.CHARGE_AIR.index()] = 155 - 13_000 / (0.2 * 1011);
    double rate =
        new ChargeCoolant()
            .kelvinPerSecond(38, new double[] {21_800, 400, 0.3, 0, 8}, CLIMB, around);
    assertThat(rate).isCloseTo(0.596, within(0.001));
  }

  @Test
  void theThermostatHoldsCoolantAndTheFanHoldsItAgain() {
    EngineCoolant balance = new EngineCoolant();
    double[] usual = {140_000, 0.21, 85, 1_700, 0.35, 99, 10};
    double[] around = new double[Store.COUNT];
    Load cruise = new Load(50, 1800, 25, 140, 0.08, 20);
    double settled = settle(balance, usual, cruise, around);
    assertThat(settled).isBetween(85.0, 95.0);
    double[] weakFan = usual.clone();
    weakFan[4] = 0.01;
    Load hot = new Load(200, 2400, 15, 520, 0.3, 42);
    assertThat(settle(balance, weakFan, hot, around))
        .isGreaterThan(settle(balance, usual, hot, around) + 3);
  }

  private static double settle(
      HeatBalance balance, double[] parameters, Load load, double[] around) {
    double celsius = 90;
    for (int i = 0; i < 2000; i++) {
      celsius = balance.step(celsius, parameters, load, around, 0, 5);
    }
    return celsius;
  }

  private static double[] around(Store store, double celsius) {
    double[] around = new double[Store.COUNT];
    around[store.index()] = celsius;
    return around;
  }
}
