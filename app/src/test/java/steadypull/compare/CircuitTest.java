package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CircuitTest {
  private static final double JOULES = 60_000;
  private static final double WATTS = 250;
  private static final double OUTSIDE = 20;

  /** A constant heat on rollers in still air of 20 degC at sea level. */
  private record Constant(double watts, int endSecond) implements LoadCourse {
    @Override
    public int firstSecond() {
      return 0;
    }

    @Override
    public double heatWatts(int second, double celsius) {
      return watts;
    }

    @Override
    public double outsideCelsius(int second) {
      return OUTSIDE;
    }

    @Override
    public double logSpeed(int second) {
      return 0;
    }

    @Override
    public double logDensity(int second) {
      return 0;
    }

    @Override
    public boolean isOnRollers() {
      return true;
    }
  }

  private static double[] own(double lagSeconds, double warmEnd) {
    return new double[] {lagSeconds, 0, 0.6, 0.3, 0.7, warmEnd};
  }

  private static final Circuit PLAIN =
      new PlainCircuit(
          Prior.positive(JOULES, 1),
          Prior.positive(WATTS, 1),
          Prior.positive(4, 1),
          Prior.positive(1e-7, 1));

  // dT/dt = (Q - UA (T - To)) / C: T = To + Q/UA (1 - exp(-t UA/C)); tau = 240 s.
  @Test
  void aConstantHeatRisesAsTheClosedFormSays() {
    double[] shown =
        PLAIN.shown(JOULES, WATTS, own(0, 0), new Constant(10_000, 601), Effects.none(OUTSIDE));

    for (int second : new int[] {15, 60, 120, 600}) {
      double closed = OUTSIDE + 40 * -Math.expm1(-second / 240.0);
      assertThat(shown[second]).isCloseTo(closed, within(0.001));
    }
    assertThat(PLAIN.settled(WATTS, own(0, 0), new Constant(10_000, 601), 0, Effects.none(OUTSIDE)))
        .isCloseTo(60, within(0.001));
  }

  // Behind a lag of 10 s the closed form of two stores in a row: a = 1/240, b = 1/10.
  @Test
  void theSensorShowsItLate() {
    double[] shown =
        PLAIN.shown(JOULES, WATTS, own(10, 0), new Constant(10_000, 201), Effects.none(OUTSIDE));

    for (int second : new int[] {15, 60, 120}) {
      double late = (240 * Math.exp(-second / 240.0) - 10 * Math.exp(-second / 10.0)) / (240 - 10);
      assertThat(shown[second]).isCloseTo(OUTSIDE + 40 * (1 - late), within(0.25));
    }
  }

  @Test
  void moreOfTheSameWaterShowsTheSameLoadLater() {
    assertThat(PLAIN.lagSeconds(2 * JOULES, own(4, 3e-4)))
        .isGreaterThan(PLAIN.lagSeconds(JOULES, own(4, 3e-4)) + 15);
  }

  // Wide open at 95 degC; one third open lets more than a third of the heat through.
  @Test
  void aThermostatGivesLittleWhileShutAndAllAboveItsSpan() {
    var engine = new ThermostatCircuit();
    double[] own = {4, 0, 86, 9, 0, 120, 0.6, 1.6};
    var load = new Constant(0, 10);

    double shut = engine.givenWatts(80, 1500, own, load, 0, Effects.none(80));
    double third = engine.givenWatts(89, 1500, own, load, 0, Effects.none(80));
    double open = engine.givenWatts(96, 1500, own, load, 0, Effects.none(80));

    assertThat(shut).isCloseTo(60 * 60, within(0.1));
    assertThat(third).isBetween(0.4 * open, 0.7 * open);
    assertThat(open).isCloseTo((1500 + 60) * 76, within(0.1));
    assertThat(ThermostatCircuit.fullyOpenCelsius(own)).isEqualTo(95);
  }
}
