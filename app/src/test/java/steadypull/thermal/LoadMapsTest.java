package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class LoadMapsTest {
  private static final double LEAN = 0.66;
  private static final double RICH = 0.5;

  private final LoadMaps maps = new LoadMaps();

  @Test
  void anUnchangedLoadStaysExactlyAsMeasured() {
    learnTwoLoads();
    Load odd = new Load(140, 2000, 25, 300, 0.3, 20);
    Load same = maps.moved(odd, 140, 2000, 25);
    assertThat(same.airKilogramsPerSecond()).isCloseTo(0.3, within(1e-12));
    assertThat(same.fuelKilowatts()).isCloseTo(300, within(1e-9));
  }

  // A reading from the middle of a change has the fuel of a climb and the air of a level road; at
  // another load nothing of that may be left.
  @Test
  void aReadingFromTheMiddleOfAChangeSpoilsNoOtherLoad() {
    learnTwoLoads();
    Load whole = new Load(140, 2000, 25, 370, 0.37 * RICH, 20);
    Load torn = new Load(140, 2000, 25, 370, 0.37 * RICH - 0.08, 20);
    double missed =
        maps.moved(whole, 30, 2000, 25).airKilogramsPerSecond()
            - maps.moved(torn, 30, 2000, 25).airKilogramsPerSecond();
    assertThat(missed).isBetween(0.0, 0.08 * 0.05);
  }

  // Mixture goes with torque: 90 kW at 1340 r/min are the torque of a climb (640 N.m) and as rich,
  // at 2700 r/min half of it.
  @Test
  void aHighGearAtFullLoadIsAsRichAsTheClimbAndALowOneIsLean() {
    learnTwoLoads();
    assertThat(ratio(90, 1340)).isCloseTo(RICH, within(0.02));
    assertThat(ratio(90, 2700)).isCloseTo(LEAN, within(0.02));
  }

  // Two straight lines, of air and of fuel, drift apart beyond what was driven; a mixture does not:
  // exhaust would come out a hundred degrees too hot. 60 and 134 kW were driven, 200 was not.
  @Test
  void withoutAFuelRateTheMixtureOfTheGreatestLoadIsKeptBeyondIt() {
    for (double kilowatts : new double[] {60, 134}) {
      double air = RICH * maps.fuelKilowatts(kilowatts, 2000);
      for (int second = 0; second < 60; second++) {
        maps.learn(kilowatts, 2000, OptionalDouble.of(air), OptionalDouble.empty(), 1);
      }
    }
    assertThat(ratio(134, 2000)).isCloseTo(RICH, within(0.01));
    assertThat(ratio(200, 2000)).isCloseTo(RICH, within(0.01));
  }

  @Test
  void withoutAnAirFlowAUsualMixtureIsBreathed() {
    assertThat(ratio(60, 2000)).isCloseTo(ratio(200, 2000), within(0.01)).isBetween(0.5, 0.65);
  }

  @Test
  void otherAirAndPressureGoAlong() {
    Load there = maps.moved(new Load(50, 1800, 20, 140, 0.08, 30, 88), 60, 1800, 20, 24, 88);
    assertThat(there.outsideCelsius()).isEqualTo(24);
    assertThat(there.outsideKilopascals()).isEqualTo(88);
  }

  private double ratio(double kilowatts, double rpm) {
    return maps.airKilogramsPerSecond(kilowatts, rpm) * 1000 / maps.fuelKilowatts(kilowatts, rpm);
  }

  /** 300 N.m and 640 N.m, for a minute each. */
  private void learnTwoLoads() {
    learn(60, 1900, 160, LEAN);
    learn(134, 2000, 350, RICH);
  }

  private void learn(double kilowatts, double rpm, double fuel, double ratio) {
    for (int second = 0; second < 60; second++) {
      maps.learn(kilowatts, rpm, OptionalDouble.of(fuel * ratio), OptionalDouble.of(fuel), 1);
    }
  }
}
