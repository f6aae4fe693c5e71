package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * One gear lower and without air conditioning, on a radiator whose figures are known: fully open
 * and its fan fully in, 42 degC outside at sea level, 25 m/s. Air of 1.120 kg/m3 has 0.951 of the
 * reference conductance, so 1450 W/K at the reference pass 1379 W/K. Computed by hand.
 */
class AlteredLoadTest {
  private static final double[] RADIATOR = {140_000, 0.2, 85, 1450, 0.3, 99, 8};
  private static final double[] NO_FAN = {140_000, 0.2, 85, 1450, 0, 99, 8};

  /** 266 kW burn 660 kW by the maps' beginning: 3 + 2.38 * 266 + 12 * 1.9. */
  private static final Load PULL = new Load(266.5, 1900, 25, 660, 0.37, 42);

  private final LoadMaps maps = new LoadMaps();

  private static double settled(HeatBalance balance, double[] parameters, Load load) {
    double celsius = 110;
    for (int step = 0; step < 400; step++) {
      celsius = balance.step(celsius, parameters, load, new double[Store.COUNT], 0, 20);
    }
    return celsius;
  }

  private static double coolant(double[] parameters, Load load) {
    return settled(new EngineCoolant(), parameters, load);
  }

  private Load lower(Load load) {
    return gearLower(OptionalDouble.empty()).of(load).orElseThrow();
  }

  private GearLower gearLower(OptionalDouble ratedRpm) {
    GearsSeen gears = new GearsSeen();
    for (int second = 0; second < 20; second++) {
      gears.accept(1900, 25, 1);
      gears.accept(2450, 25, 1);
    }
    return new GearLower(maps, gears, ratedRpm);
  }

  @Test
  void aLowerGearTurnsFasterAtTheSamePowerAndSpeedAndBurnsItsFriction() {
    Load lower = lower(PULL);
    assertThat(lower.engineRpm()).isCloseTo(2450, within(1.0));
    assertThat(lower.kilowatts()).isEqualTo(266.5);
    assertThat(lower.metresPerSecond()).isEqualTo(25);
    assertThat(lower.fuelKilowatts()).isCloseTo(660 + 0.55 * 12, within(0.1));
    assertThat(lower.airKilogramsPerSecond()).isGreaterThanOrEqualTo(0.37);
  }

  // 1852 W/K give 132 kW at 71.3 K; 1.079 of the fan and 1.026 of all, 1932, give 133.3 at 69.
  @Test
  void aLowerGearCoolsTheEngineByItsFan() {
    assertThat(coolant(RADIATOR, PULL)).isCloseTo(42 + 71.3, within(0.1));
    assertThat(coolant(RADIATOR, lower(PULL))).isCloseTo(42 + 69.0, within(0.1));
  }

  // By the flow of the coolant alone 1438 W/K become 1474, and friction takes back the half.
  @Test
  void withoutAFanALowerGearDoesLittle() {
    Load mild = new Load(199, 1900, 25, 500, 0.28, 42);
    double cooler = coolant(NO_FAN, mild) - coolant(NO_FAN, lower(mild));
    assertThat(cooler).isCloseTo(69.5 - 68.7, within(0.1));
  }

  @Test
  void aLowerGearLeavesTheAirBeforeTheCoolerAsHot() {
    double[] compressor = {4.0, 0.7, 8, 12};
    double[] around = new double[Store.COUNT];
    around[Store.CHARGE_AIR.index()] = 70;
    CompressorOutlet outlet = new CompressorOutlet();
    double now = outlet.step(150, compressor, PULL, around, 0, 1e4);
    assertThat(outlet.step(150, compressor, lower(PULL), around, 0, 1e4))
        .isCloseTo(now, within(1e-6));
  }

  @Test
  void anEngineNeitherTurnsFasterThanRatedNorThanItWasSeenTo() {
    assertThat(gearLower(OptionalDouble.of(2400)).of(PULL)).isEmpty();
    assertThat(gearLower(OptionalDouble.of(2500)).of(PULL)).isPresent();
    Load faster = new Load(266.5, 1900 * 1.02, 25 * 1.02, 660, 0.37, 42);
    assertThat(gearLower(OptionalDouble.empty()).of(faster)).isEmpty();
  }

  @Test
  void theLowestGearSeenHasNoLowerOneAndASlippingConverterIsNoGear() {
    assertThat(gearLower(OptionalDouble.of(4000)).of(new Load(100, 2450, 25, 280, 0.15, 42)))
        .isEmpty();
    assertThat(gearLower(OptionalDouble.of(4000)).of(new Load(100, 2150, 25, 280, 0.15, 42)))
        .isEmpty();
  }

  // kW at the engine; kelvin by the fuel (2.38 kW a kW, a fifth of it, over 1852 W/K) and by the
  // condenser (2.5 kW a kW, over 3 kW/K of air), of which the radiator's 1792 of 1852 W/K feel it.
  @ParameterizedTest
  @CsvSource({"0, 3.5, 0.90, 2.82", "-9, 2, 0.51, 1.61", "9, 5, 1.28, 4.03"})
  void airConditioningGivesBackItsFuelAndItsCondensersHeat(
      double normal, double kilowatts, double byFuel, double byCondenser) {
    Load off = new AirConditioning(maps).off(PULL, normal);
    assertThat(PULL.fuelKilowatts() - off.fuelKilowatts())
        .isCloseTo(2.38 * kilowatts, within(0.01));
    assertThat(coolant(RADIATOR, PULL) - coolant(RADIATOR, off))
        .isCloseTo(byFuel + byCondenser, within(0.05));
  }

  @Test
  void whatDrivesTheCabinsCompressorNeverWentThroughTheGearbox() {
    double[] gearbox = {22, 0.6, 320};
    Load off = new AirConditioning(maps).off(PULL, 0);
    assertThat(settled(new TransmissionFluid(), gearbox, off))
        .isEqualTo(settled(new TransmissionFluid(), gearbox, PULL));
  }

  // A condenser that hardly warmed the charge circuit's radiator cannot cool it by much.
  @Test
  void theChargeCircuitGainsNoMoreThanItsAirWasWarmer() {
    Load off = new AirConditioning(maps).off(PULL, 0);
    for (double warmer : new double[] {-3, 0, 1, 10}) {
      double[] circuit = {28_000, 300, 0.35, warmer, 8};
      double cooler =
          settled(new ChargeCoolant(), circuit, PULL) - settled(new ChargeCoolant(), circuit, off);
      assertThat(cooler).isCloseTo(Math.clamp(warmer, 0.0, 8.75 / 3), within(0.01));
    }
  }

  @Test
  void anEngineThatGivesNothingCannotGiveLess() {
    Load off = new AirConditioning(maps).off(new Load(0, 1500, 25, 0, 0.06, 30), 9);
    assertThat(off.fuelKilowatts()).isZero();
    assertThat(off.cores().coolerKelvin()).isZero();
  }

  /** Affinity laws halved: 0.7 of the speed gives 0.7^0.3 = 0.8985 of the fan (by hand). */
  @Test
  void aSlowerEngineTurnsItsFanSlowerAndAFasterOneIsPromisedNothing() {
    Load present = new Load(100, 2000, 20, 250, 0.2, 30);
    Load slower = Outlooks.turning(present, new Load(70, 1400, 14, 180, 0.14, 30));
    Load faster = Outlooks.turning(present, new Load(100, 2500, 20, 250, 0.2, 30));
    assertThat(slower.cores().fanShare()).isCloseTo(0.8985, within(1e-4));
    assertThat(slower.cores().swallowedShare()).isEqualTo(1);
    assertThat(faster.cores()).isEqualTo(CoreChange.NONE);
  }
}
