package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.vehicle.CoolingLayout;

/** What is known of towing vehicles without any model, held against the models. */
class TowingFactsTest {
  private static final double OUTSIDE = 34;

  /** A pull of 390 N.m at 90 km/h on a dynamometer, whose fan gives half of the road's wind. */
  private static final Load PULL = new Load(122, 3000, 12, 330, 0.19, OUTSIDE);

  private static final double[] COOLER = {1.9, 1, 8, 0.6};
  private static final double[] CIRCUIT = {24_000, 75, 0.35, 4, 8};

  /** One more heat exchanger, and 4.9 L of 50/50 coolant in it: 18 kJ/K (computed). */
  private static final double[] MORE_COOLANT = {42_000, 75, 0.35, 4, 8};

  private static final double[] MORE_RADIATOR = {24_000, 170, 0.35, 4, 8};
  private static final double[] BOTH = {42_000, 170, 0.35, 4, 8};

  // Second law: no heat flows from cold water into hotter air.
  @Test
  void airNeverLeavesACoolerColderThanTheWaterThatEntersIt() {
    Random random = new Random(5);
    ChargeAir cooler = new ChargeAir(CoolingLayout.WATER_TO_AIR);
    for (int i = 0; i < 2000; i++) {
      Load load = new Load(0, 2000, 30 * random.nextDouble(), 0, random.nextDouble(), 20);
      double water = 10 + 90 * random.nextDouble();
      double inlet = water + 150 * random.nextDouble();
      double[] around = around(inlet, 0, water);
      double[] parameters = {5 * random.nextDouble(), 0, 8, random.nextDouble()};
      double leaves = cooler.step(20, parameters, load, around, 0, 1e4);
      assertThat(leaves).as("draw %d", i).isBetween(water - 1e-9, inlet + 1e-9);
    }
  }

  // First law, air at 1.01 kJ/(kg K): of 6 L of 50/50 coolant (21.8 kJ/K, ASHRAE data) 13 kW raise
  // at most 0.6 K/s (computed).
  @Test
  void aCircuitFedByChargeAirAloneRisesNoFasterThanItsHeatAllows() {
    Random random = new Random(6);
    for (int i = 0; i < 2000; i++) {
      Load load = new Load(0, 2000, 30 * random.nextDouble(), 0, 0.3 * random.nextDouble(), 20);
      double[] around = around(20 + 180 * random.nextDouble(), 20 + 60 * random.nextDouble(), 0);
      double watts = load.airKilogramsPerSecond() * 1011 * (around[0] - around[1]);
      double water = 20 + 80 * random.nextDouble();
      double[] parameters = {21_800, 600 * random.nextDouble(), random.nextDouble(), 0, 8};
      double rate = new ChargeCoolant().kelvinPerSecond(water, parameters, load, around);
      assertThat(rate).as("draw %d", i).isLessThanOrEqualTo(watts / 21_800 + 1e-9);
    }
  }

  // Common practice, no source: thermostatted coolant starts a pull at 86 to 92 degC whatever the
  // weather.
  @ParameterizedTest
  @ValueSource(doubles = {-10, 5, 20, 38})
  void thermostattedCoolantIsAsWarmWhateverTheWeather(double outside) {
    double cruise = settled(engine(0.3), new Load(50, 1800, 23, 140, 0.08, outside));
    assertThat(cruise).isBetween(86.0, 92.0);
  }

  // Common practice, no source: fully open, above about 95 degC, it follows outside temperature 1:1
  // until the fan comes in.
  @Test
  void fullyOpenItFollowsTheWeatherOneToOne() {
    double mild = settled(engine(0), new Load(190, 2600, 20, 480, 0.27, 30));
    double hot = settled(engine(0), new Load(190, 2600, 20, 480, 0.27, 40));
    assertThat(mild).isGreaterThan(95);
    // Hot air is thinner: 10 K take 2 % off the conductance.
    assertThat((hot - mild) / 10).isCloseTo(1, within(0.2));
  }

  // Common practice, no source: repeat pulls whose starts lie within 3 K agree within 2 K (coolant)
  // and 3 K (charge air) at their end, after two minutes.
  @Test
  void repeatPullsAgree() {
    double[] first = pulled(CIRCUIT, 68, 120);
    double[] again = pulled(CIRCUIT, 71, 120);
    assertThat(again[1] - first[1]).isBetween(0.0, 2.0);
    assertThat(again[0] - first[0]).isBetween(0.0, 3.0);
  }

  // Common practice, no source: one pull took its charge coolant from 68 to 113 degC in 100 s; with
  // one more heat exchanger and 4.9 L more it stood at 84 and then 90 degC after two minutes.
  @Test
  void aHeatExchangerMoreShowsBothItsEffects() {
    assertThat(pulled(CIRCUIT, 68, 100)[1]).isBetween(104.0, 116.0);
    assertThat(pulled(BOTH, 62, 120)[1]).isBetween(82.0, 92.0);
    double alone = pulled(MORE_COOLANT, 68, 100)[1];
    double radiator = pulled(MORE_RADIATOR, 68, 100)[1];
    assertThat(alone).as("more coolant delays").isLessThan(pulled(CIRCUIT, 68, 100)[1] - 6);
    assertThat(radiator).as("more radiator cools").isLessThan(pulled(CIRCUIT, 68, 100)[1] - 4);
    double before = pulled(CIRCUIT, 68, 7200)[1];
    assertThat(pulled(MORE_COOLANT, 68, 7200)[1])
        .as("coolant only delays")
        .isCloseTo(before, within(0.5));
    assertThat(pulled(MORE_RADIATOR, 68, 7200)[1]).as("a radiator lasts").isLessThan(before - 15);
  }

  /** Charge air and charge coolant after a pull from some coolant temperature, degC. */
  private static double[] pulled(double[] circuit, double startCelsius, int seconds) {
    ChargeAir cooler = new ChargeAir(CoolingLayout.WATER_TO_AIR);
    ChargeCoolant coolant = new ChargeCoolant();
    double[] around = around(172, startCelsius + 10, startCelsius);
    for (int second = 0; second < seconds; second++) {
      int air = Store.CHARGE_AIR.index();
      int water = Store.CHARGE_COOLANT.index();
      around[air] = cooler.step(around[air], COOLER, PULL, around, 0, 1);
      around[water] = coolant.step(around[water], circuit, PULL, around, 0, 1);
    }
    return new double[] {around[Store.CHARGE_AIR.index()], around[Store.CHARGE_COOLANT.index()]};
  }

  private static double[] engine(double fan) {
    return new double[] {140_000, 0.2, 85, 1450, fan, 99, 8};
  }

  private static double settled(double[] parameters, Load load) {
    double celsius = 90;
    for (int step = 0; step < 3000; step++) {
      celsius = new EngineCoolant().step(celsius, parameters, load, around(0, 0, 0), 0, 5);
    }
    return celsius;
  }

  private static double[] around(double inlet, double air, double water) {
    double[] around = new double[Store.COUNT];
    around[Store.CHARGE_INLET.index()] = inlet;
    around[Store.CHARGE_AIR.index()] = air;
    around[Store.CHARGE_COOLANT.index()] = water;
    return around;
  }
}
