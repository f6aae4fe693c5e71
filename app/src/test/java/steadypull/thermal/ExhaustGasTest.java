package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ExhaustGasTest {
  private static final Load PULL = new Load(120, 2000, 22, 300, 0.165, 25);
  private static final Load OVERRUN = new Load(0, 1500, 22, 0, 0.06, 25);

  private final ChannelEstimate estimate =
      new ChannelEstimate(Store.EXHAUST, new ExhaustGas(), 0, 25);
  private double celsius = 400;
  private int second;

  private void drive(int seconds, Load load, double settles) {
    for (int until = second + seconds; second < until; ) {
      second++;
      celsius += (settles - celsius) / 8;
      estimate.advance(
          second, load, new double[Store.COUNT], OptionalDouble.of(Math.rint(celsius)));
    }
  }

  /** Degrees that a pull settles at by what was learnt. */
  private double pullSettles() {
    double[] parameters = estimate.physical(estimate.state());
    double now = 600;
    return now
        + new ExhaustGas().kelvinPerSecond(now, parameters, PULL, new double[Store.COUNT])
            * parameters[2];
  }

  // Friction and walls warm what an engine pumps down a hill to 150 degC without any fuel; taken
  // for a hotter engine it had the next pull foretold 70 K too hot, and warned of.
  @Test
  void anEngineThatDoesNotFireSaysNothingOfItsPull() {
    drive(600, PULL, 560);
    double before = pullSettles();
    assertThat(before).isCloseTo(560, within(15.0));
    drive(180, OVERRUN, 150);
    assertThat(estimate.celsius()).isCloseTo(150, within(5.0));
    assertThat(pullSettles()).isCloseTo(before, within(10.0));
  }
}
