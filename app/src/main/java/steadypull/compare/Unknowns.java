package steadypull.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Everything that runs of both sides leave open, in one row: the circuit's C and UA and what
 * differs between the sides, what both share, what differs from day to day and from run to run.
 * Runs of one day share that day's errors, so that before and after on one day are compared as a
 * pair. Immutable.
 */
final class Unknowns {
  private static final int JOULES = 0;
  private static final int WATTS = 1;
  private static final int MORE_JOULES = 2;
  private static final int MORE_WATTS = 3;
  private static final int OWN = 4;
  private static final int PER_DAY = 4;
  private static final int PER_RUN = 4;

  /** A change of the cooling is believed within a factor of 1.8, two times in three (estimated). */
  private static final double CHANGE_SHARE = 0.6;

  /** Outside-air sensors: offset, and heat that soaks in at standstill, K (estimated). */
  private static final double OUTSIDE_PER_DAY = 1.3;

  private static final double OUTSIDE_PER_RUN = 0.4;

  /** A probe of one's own before the grille, K (estimated). */
  private static final double PROBE_PER_DAY = 0.5;

  /** Mean headwind of a day that nobody noted, and what differs within it, m/s (estimated). */
  private static final double WIND_PER_DAY = 2.5;

  private static final double WIND_PER_RUN = 1.0;
  private static final double SPEED_EXPONENT = 0.6;
  private static final double SLOWEST = 8;

  /** A workshop's fan put back where it stood (estimated). */
  private static final double FAN_PER_DAY = 0.02;

  private static final double FAN_PER_RUN = 0.008;
  private static final double START_KELVIN = 3;

  private final Circuit circuit;
  private final List<Prior> priors = new ArrayList<>();
  private final List<Integer> dayOf = new ArrayList<>();
  private final List<Side> sideOf = new ArrayList<>();
  private final int days;

  Unknowns(Circuit circuit, List<RunLoad> loads, HeatSource source) {
    this.circuit = circuit;
    priors.add(circuit.joulesPerKelvin());
    priors.add(circuit.wattsPerKelvin());
    priors.add(Prior.free(0, CHANGE_SHARE));
    priors.add(Prior.free(0, CHANGE_SHARE));
    priors.addAll(circuit.own());
    Map<String, Integer> seen = new LinkedHashMap<>();
    for (RunLoad load : loads) {
      String day = load.run().day().map(Object::toString).orElse("");
      if (!seen.containsKey(day)) {
        seen.put(day, seen.size());
        ofDay(load, source);
      }
      dayOf.add(seen.get(day));
      sideOf.add(load.run().side());
    }
    days = seen.size();
    loads.forEach(this::ofRun);
  }

  private void ofDay(RunLoad load, HeatSource source) {
    boolean isProbed = load.run().notes().probeCelsius().isPresent();
    priors.add(Prior.free(0, isProbed ? PROBE_PER_DAY : OUTSIDE_PER_DAY));
    priors.add(Prior.free(0, load.isOnRollers() ? FAN_PER_DAY : windShare(load, WIND_PER_DAY)));
    priors.add(Prior.free(0, source.dailyDrift()));
    priors.add(Prior.free(0, circuit.sensorKelvinPerDay()));
  }

  private void ofRun(RunLoad load) {
    priors.add(Prior.free(load.firstShown(), START_KELVIN));
    priors.add(Prior.free(0, OUTSIDE_PER_RUN));
    double fan = FAN_PER_RUN + circuit.sharePerRun();
    priors.add(Prior.free(0, load.isOnRollers() ? fan : windShare(load, WIND_PER_RUN)));
    priors.add(Prior.free(0, circuit.sharePerRun()));
  }

  /** What a headwind does to the conductance, as a share. */
  private static double windShare(RunLoad load, double metresPerSecond) {
    return SPEED_EXPONENT * metresPerSecond / Math.max(SLOWEST, load.heldSpeed());
  }

  /** What is believed of each before any run. */
  List<Prior> priors() {
    return List.copyOf(priors);
  }

  int size() {
    return priors.size();
  }

  /** Days among the runs. */
  int days() {
    return days;
  }

  /** Whether an unknown has something to do with a run. */
  boolean concerns(int unknown, int run) {
    int firstDay = OWN + circuit.own().size();
    int firstRun = firstDay + PER_DAY * days;
    if (unknown < firstDay) {
      return true;
    }
    return unknown < firstRun
        ? (unknown - firstDay) / PER_DAY == dayOf.get(run)
        : (unknown - firstRun) / PER_RUN == run;
  }

  /** Whether it differs from day to day or from run to run; not where a run began. */
  boolean isOfDayOrRun(int unknown) {
    int firstDay = OWN + circuit.own().size();
    int firstRun = firstDay + PER_DAY * days;
    boolean isStart = unknown >= firstRun && (unknown - firstRun) % PER_RUN == 0;
    return unknown >= firstDay && !isStart;
  }

  /** Heat capacity of a side, J/K. */
  double joules(double[] at, Side side) {
    return Math.exp(at[JOULES] + half(side) * at[MORE_JOULES]);
  }

  /** Conductance of a side, W/K. */
  double watts(double[] at, Side side) {
    return Math.exp(at[WATTS] + half(side) * at[MORE_WATTS]);
  }

  private static double half(Side side) {
    return switch (side) {
      case BEFORE -> -0.5;
      case AFTER -> 0.5;
    };
  }

  /** What both sides share, in its own units. */
  double[] own(double[] at) {
    double[] own = new double[circuit.own().size()];
    for (int i = 0; i < own.length; i++) {
      own[i] = priors.get(OWN + i).value(at[OWN + i]);
    }
    return own;
  }

  /** What one run differs in. */
  Effects effects(double[] at, int run) {
    int day = OWN + circuit.own().size() + PER_DAY * dayOf.get(run);
    int own = OWN + circuit.own().size() + PER_DAY * days + PER_RUN * run;
    return new Effects(
        at[day] + at[own + 1],
        Math.exp(at[day + 1] + at[own + 2]),
        Math.exp(at[day + 2] + at[own + 3]),
        at[own],
        at[day + 3]);
  }

  Side side(int run) {
    return sideOf.get(run);
  }

  Circuit circuit() {
    return circuit;
  }
}
