package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.vehicle.CoolingLayout;

/** What is learnt of a charge cooler over gentle hills. */
class ChargeAirTest {
  private static final double WATER = 60;
  private static final double AIR_HEAT_CAPACITY = 1011;
  private static final double PULL = 0.24;
  private static final int TURN_SECONDS = 90;

  private final ChannelEstimate estimate =
      new ChannelEstimate(Store.CHARGE_AIR, new ChargeAir(CoolingLayout.WATER_TO_AIR), 0, 30);
  private double shown = WATER;
  private int second;

  // eps = 1 - exp(-UA / C), the relation of any heat exchanger whose cold stream hardly warms
  // (Incropera and DeWitt ch. 11), where UA is all that the core and its water let through, or
  // grows with the air flow to 0.6 as flow in ducts does (ch. 8). Two flows of a cruise must tell
  // what comes of three times as much, 115 K above its water, as far as the prior lets them: with
  // one power for all coolers it was 2.5 and 5.5 K too cool, which passed for a disturbance later.
  @ParameterizedTest
  @CsvSource({"0, 4", "0.3, 2", "0.6, 2"})
  void whatACoolerLosesToAFullPullIsForetoldFromACruise(double conductanceGrows, double kelvin) {
    for (int turn = 0; turn < 8; turn++) {
      drive(0.07, conductanceGrows);
      drive(0.14, conductanceGrows);
    }
    double[] state = estimate.state();
    double[] found = estimate.physical(state);
    Load pull = load(PULL);
    double effectiveness =
        new ChargeAir(CoolingLayout.WATER_TO_AIR).effectiveness(found[0], found[3], pull);
    double inlet = inlet(PULL);
    double settles = inlet - effectiveness * (inlet - WATER - found[1]);
    assertThat(settles).isCloseTo(leaves(PULL, conductanceGrows), within(kelvin));
  }

  private void drive(double air, double conductanceGrows) {
    for (int each = 0; each < TURN_SECONDS; each++) {
      second++;
      shown += (leaves(air, conductanceGrows) - shown) / 4;
      double[] around = new double[Store.COUNT];
      around[Store.CHARGE_INLET.index()] = inlet(air);
      around[Store.CHARGE_COOLANT.index()] = WATER;
      around[Store.CHARGE_AIR.index()] = estimate.celsius();
      estimate.advance(second, load(air), around, OptionalDouble.of(Math.rint(shown)));
    }
  }

  /** Charge air behind a cooler of 590 W/K at the full pull, degC. */
  private static double leaves(double air, double conductanceGrows) {
    double conductance = 590 * Math.pow(air / PULL, conductanceGrows);
    double effectiveness = -Math.expm1(-conductance / (air * AIR_HEAT_CAPACITY));
    return inlet(air) - effectiveness * (inlet(air) - WATER);
  }

  private static double inlet(double air) {
    return 60 + 480 * air;
  }

  private static Load load(double air) {
    return new Load(air * 770, 2500, 25, air * 1850, air, 30);
  }
}
