package steadypull.thermal;

import java.util.Arrays;

/**
 * One store in all draws, as they run ahead side by side: what one draw takes next waits for what
 * it took before, what the others take does not. Used by one thread.
 */
final class StoreRunner {
  private final int index;
  private final HeatBalance balance;
  private final StoreBeginning begin;
  private final double[] behindSensor;

  // Most steps are as long as the one before, and most stores return as strongly.
  private final double[] keptBySensor;
  private final double[] lastRelaxation;
  private final double[] shareOfRate;
  private double lastSeconds = -1;

  /** Begins where a store's draws do, which stay as they are. */
  StoreRunner(StoreBeginning begin) {
    this.index = begin.store().index();
    this.balance = begin.balance();
    this.begin = begin;
    this.behindSensor = begin.celsius().clone();
    this.keptBySensor = new double[behindSensor.length];
    this.lastRelaxation = new double[behindSensor.length];
    this.shareOfRate = new double[behindSensor.length];
    Arrays.fill(lastRelaxation, -1);
  }

  /** Where the store stands in arrays of all stores. */
  int index() {
    return index;
  }

  /**
   * Moves this store and what its sensor shows by one step, in every draw.
   *
   * @param shown degC that the sensor of every store shows, by draw and {@link Store#index()}; this
   *     store's is written
   * @param loads what acts during the step, by draw
   * @param kept share of the present disturbance that is left by then, 0 to 1
   * @param grown share of the disturbance to come that is there by then, 0 to 1
   * @param seconds length of the step
   */
  void advance(double[][] shown, Load[] loads, double kept, double grown, double seconds) {
    if (seconds != lastSeconds) {
      lastSeconds = seconds;
      forgetUnderWay(seconds);
    }
    double[] celsius = behindSensor;
    double[] now = begin.disturbance();
    double[] toCome = begin.disturbanceToCome();
    for (int draw = 0; draw < celsius.length; draw++) {
      double[] around = shown[draw];
      double added = now[draw] * kept + toCome[draw] * grown;
      double after = celsius[draw] + moved(draw, loads[draw], around, added, seconds);
      celsius[draw] = after;
      around[index] = after + (around[index] - after) * keptBySensor[draw];
    }
  }

  private double moved(int draw, Load load, double[] around, double added, double seconds) {
    double celsius = behindSensor[draw];
    double[] parameters = begin.parameters()[draw];
    double rate = rate(celsius, parameters, load, around);
    double relaxation = returns(celsius, rate, parameters, load, around) * seconds;
    if (relaxation != lastRelaxation[draw]) {
      lastRelaxation[draw] = relaxation;
      shareOfRate[draw] = HeatBalance.shareOfRate(relaxation);
    }
    return (rate + added) * shareOfRate[draw] * seconds;
  }

  private void forgetUnderWay(double seconds) {
    for (int draw = 0; draw < keptBySensor.length; draw++) {
      double lag = begin.sensorLagSeconds()[draw];
      keptBySensor[draw] = lag == 0 ? 0 : Math.exp(-seconds / lag);
    }
  }

  private double rate(double celsius, double[] parameters, Load load, double[] around) {
    return switch (balance) {
      case CompressorOutlet it -> it.kelvinPerSecond(celsius, parameters, load, around);
      case ChargeAir it -> it.kelvinPerSecond(celsius, parameters, load, around);
      case ChargeCoolant it -> it.kelvinPerSecond(celsius, parameters, load, around);
      case EngineCoolant it -> it.kelvinPerSecond(celsius, parameters, load, around);
      case EngineOil it -> it.kelvinPerSecond(celsius, parameters, load, around);
      case TransmissionFluid it -> it.kelvinPerSecond(celsius, parameters, load, around);
      case ExhaustGas it -> it.kelvinPerSecond(celsius, parameters, load, around);
    };
  }

  private double returns(
      double celsius, double rate, double[] parameters, Load load, double[] around) {
    return switch (balance) {
      case CompressorOutlet it -> it.returnPerSecond(celsius, rate, parameters, load, around);
      case ChargeAir it -> it.returnPerSecond(celsius, rate, parameters, load, around);
      case ChargeCoolant it -> it.returnPerSecond(celsius, rate, parameters, load, around);
      case EngineCoolant it -> it.returnPerSecond(celsius, rate, parameters, load, around);
      case EngineOil it -> it.returnPerSecond(celsius, rate, parameters, load, around);
      case TransmissionFluid it -> it.returnPerSecond(celsius, rate, parameters, load, around);
      case ExhaustGas it -> it.returnPerSecond(celsius, rate, parameters, load, around);
    };
  }
}
