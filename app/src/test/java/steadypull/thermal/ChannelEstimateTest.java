package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.vehicle.CoolingLayout;

class ChannelEstimateTest {
  private static final double OUTSIDE = 30;

  /** A condenser of 3 kW in 1 kg/s of air. */
  private static final double FRONT_KELVIN = 3;

  /** A coolant probe; common practice 4 to 10 s, no source. */
  private static final double PROBE_SECONDS = 6;

  /** How much coolant and how big a radiator a simulated circuit has. */
  private record Circuit(double joulesPerKelvin, double wattsPerKelvin) {}

  // Before and after a change: more coolant only delays, a bigger radiator lasts; identification
  // must tell them apart (4.9 L of 50/50 coolant is worth 18 kJ/K, computed).
  @ParameterizedTest
  @CsvSource({"30000, 300", "48000, 300", "30000, 450", "48000, 450"})
  void heatCapacityAndConductanceAreFoundWithinTheirIntervals(
      double joulesPerKelvin, double wattsPerKelvin) {
    ChannelEstimate found = identified(new Circuit(joulesPerKelvin, wattsPerKelvin), 1500, 7);
    assertThat(found.belief(0).middle()).isCloseTo(joulesPerKelvin, within(0.12 * joulesPerKelvin));
    assertThat(found.belief(1).middle()).isCloseTo(wattsPerKelvin, within(0.2 * wattsPerKelvin));
    assertThat(found.belief(0).holds(joulesPerKelvin)).isTrue();
    assertThat(found.belief(1).holds(wattsPerKelvin)).isTrue();
  }

  // One more heat exchanger and 4.9 L more: both effects are there, and each interval excludes what
  // was before.
  @Test
  void aChangedCircuitIsToldFromTheOldOneInBothItsEffects() {
    ChannelEstimate before = identified(new Circuit(30_000, 300), 1500, 7);
    ChannelEstimate after = identified(new Circuit(48_000, 450), 1500, 8);
    assertThat(after.belief(0).low()).isGreaterThan(before.belief(0).high());
    assertThat(after.belief(1).low()).isGreaterThan(before.belief(1).middle());
    assertThat(before.belief(1).high()).isLessThan(after.belief(1).middle());
  }

  @Test
  void aWildReadingMovesTheTemperatureLittle() {
    ChannelEstimate estimate = estimate();
    for (int second = 1; second <= 60; second++) {
      estimate.advance(second, load(second), around(60), OptionalDouble.of(60));
    }
    double before = estimate.celsius();
    estimate.advance(61, load(61), around(60), OptionalDouble.of(215));
    assertThat(estimate.celsius()).isCloseTo(before, within(3.0));
  }

  // A quarter of an hour of nonsense, here an air flow told twenty times too great, drives
  // parameters to the edge of what may be believed; true readings must bring them back.
  @Test
  void aParameterThatWasDrivenOutOfAllReasonComesBack() {
    ChannelEstimate estimate = estimate();
    double celsius = OUTSIDE + 12;
    for (int second = 1; second <= 900; second++) {
      Load load = load(second);
      Load told =
          load.at(load.kilowatts(), load.fuelKilowatts(), 20 * load.airKilogramsPerSecond());
      celsius = circuitAfterASecond(celsius, second);
      estimate.advance(
          second, told, around(inlet(second), celsius + 12), OptionalDouble.of(Math.rint(celsius)));
    }
    assertThat(estimate.physical(estimate.state())[1]).isGreaterThan(3 * 300);
    for (int second = 901; second <= 4500; second++) {
      celsius = circuitAfterASecond(celsius, second);
      estimate.advance(
          second,
          load(second),
          around(inlet(second), celsius + 12),
          OptionalDouble.of(Math.rint(celsius)));
    }
    double[] found = estimate.physical(estimate.state());
    assertThat(found[0]).isCloseTo(30_000, within(0.2 * 30_000));
    assertThat(found[1]).isCloseTo(300, within(0.2 * 300));
  }

  /** One second of a circuit of 30 kJ/K and 300 W/K. */
  private static double circuitAfterASecond(double celsius, int second) {
    double heat = load(second).airKilogramsPerSecond() * 1011 * (inlet(second) - celsius - 12);
    return celsius + (heat - 300 * (celsius - OUTSIDE)) / 30_000;
  }

  @Test
  void afterALongGapTheTemperatureIsTakenAnewAndTheParametersAreKept() {
    ChannelEstimate estimate = estimate();
    for (int second = 1; second <= 60; second++) {
      estimate.advance(second, load(second), around(60), OptionalDouble.of(60));
    }
    double[] before = estimate.physical(estimate.state());
    estimate.advance(400, load(400), around(60), OptionalDouble.of(38));
    assertThat(estimate.celsius()).isEqualTo(38);
    assertThat(estimate.physical(estimate.state())).isEqualTo(before);
  }

  // Common practice, no source: readings of one pull at 380 to 400 N.m, 25 s apart, charge coolant
  // 68, 71, 92, 104, 113 degC with 140, none, 164, 180, 175 degC before the cooler. The pump brings
  // hot water round late, so the second reading nearly stands and the third leaps; the next must
  // still lie in the 90 % band.
  @ParameterizedTest
  @CsvSource({"0.16, 14", "0.19, 25", "0.22, 25"})
  void theReadingsOfARealPullLieInTheBandOfThoseBefore(double airKilograms, double wind) {
    Load pull = new Load(122, 3000, wind, 330, airKilograms, OUTSIDE);
    List<ChannelEstimate> circuit =
        List.of(
            new ChannelEstimate(Store.CHARGE_INLET, new CompressorOutlet(), 0, OUTSIDE),
            new ChannelEstimate(
                Store.CHARGE_AIR, new ChargeAir(CoolingLayout.WATER_TO_AIR), 0, OUTSIDE),
            estimate());
    OptionalDouble none = OptionalDouble.empty();
    advance(circuit, 1, pull, OptionalDouble.of(140), 68);
    advance(circuit, 25, pull, none, 71);
    advance(circuit, 50, pull, OptionalDouble.of(164), 92);
    assertThat(104.0).isBetween(ahead(circuit, 50, pull, 0), ahead(circuit, 50, pull, 6));
    advance(circuit, 75, pull, OptionalDouble.of(180), 104);
    assertThat(113.0).isBetween(ahead(circuit, 75, pull, 0), ahead(circuit, 75, pull, 6) + 1);
  }

  private static void advance(
      List<ChannelEstimate> circuit,
      double seconds,
      Load load,
      OptionalDouble inlet,
      double coolant) {
    double[] around = new double[Store.COUNT];
    circuit.forEach(each -> around[each.store().index()] = each.celsius());
    circuit.get(0).advance(seconds, load, around, inlet);
    circuit.get(1).advance(seconds, load, around, OptionalDouble.empty());
    circuit.get(2).advance(seconds, load, around, OptionalDouble.of(coolant));
  }

  private static double ahead(List<ChannelEstimate> circuit, double seconds, Load load, int level) {
    Ensemble ensemble = new Ensemble();
    double[][] draws =
        ensemble
            .outlook(ensemble.begin(circuit, seconds), load, (draw, point) -> load)
            .draws(Store.CHARGE_COOLANT);
    return Band.fan(ensemble.secondsAhead(), new Courses(circuit.get(2).celsius(), draws, 0))
        .at(level, 25);
  }

  private static ChannelEstimate identified(Circuit circuit, int seconds, long seed) {
    Random random = new Random(seed);
    ChannelEstimate estimate = estimate();
    double celsius = OUTSIDE + 12;
    double probe = celsius;
    for (int second = 1; second <= seconds; second++) {
      Load load = load(second);
      double outlet = celsius + 12;
      double heat = load.airKilogramsPerSecond() * 1011 * (inlet(second) - outlet);
      double lost = circuit.wattsPerKelvin() * (celsius - OUTSIDE - FRONT_KELVIN);
      celsius += (heat - lost) / circuit.joulesPerKelvin();
      probe += (celsius - probe) / PROBE_SECONDS;
      double shown = Math.floor(probe + 0.5 + 0.1 * random.nextGaussian());
      estimate.advance(second, load, around(inlet(second), outlet), OptionalDouble.of(shown));
    }
    return estimate;
  }

  private static ChannelEstimate estimate() {
    return new ChannelEstimate(Store.CHARGE_COOLANT, new ChargeCoolant(), 0, OUTSIDE);
  }

  /** Two minutes hard, two minutes easy, at 25 m/s. */
  private static Load load(int second) {
    boolean isHard = second / 120 % 2 == 0;
    return new Load(isHard ? 150 : 40, 2000, 25, isHard ? 380 : 120, isHard ? 0.2 : 0.08, OUTSIDE);
  }

  private static double inlet(int second) {
    return second / 120 % 2 == 0 ? 160 : 75;
  }

  private static double[] around(double celsius) {
    return around(celsius, celsius);
  }

  private static double[] around(double inlet, double outlet) {
    double[] around = new double[Store.COUNT];
    around[Store.CHARGE_INLET.index()] = inlet;
    around[Store.CHARGE_AIR.index()] = outlet;
    return around;
  }
}
