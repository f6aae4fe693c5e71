package steadypull.compare;

import java.util.ArrayList;
import java.util.List;
import steadypull.demo.plant.Duty;
import steadypull.demo.plant.Plant;
import steadypull.demo.plant.PlantState;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.RigTrait;
import steadypull.demo.plant.Surroundings;
import steadypull.demo.plant.WarmStart;

/** What the plant itself does under the common conditions, with the C and the UA of either side. */
final class Truth {
  private static final int SETTLED = 1500;

  /** Lag of the plant's temperature sensors where it is not varied. */
  private static final double SENSOR_SECONDS = 4;

  private final double[] before;
  private final double[] after;
  private final double[] delays;

  private Truth(double[] before, double[] after, double[] delays) {
    this.before = before;
    this.after = after;
    this.delays = delays;
  }

  /** Conditions in which both are run. */
  record At(
      int gear,
      double metresPerSecond,
      double newtonMetres,
      double coolingMetresPerSecond,
      double outsideCelsius,
      double kilopascals,
      double chargeCelsius,
      double engineCelsius) {}

  /** Which temperature is compared. */
  interface Place {
    double of(PlantState state);
  }

  /** Before the change at a second, degC. */
  double before(int second) {
    return before[second];
  }

  /** After the change at a second, degC. */
  double after(int second) {
    return after[second];
  }

  /** What the other heat capacity takes off at a second, K. */
  double delays(int second) {
    return delays[second];
  }

  double gain(int second) {
    return before[second] - after[second];
  }

  double lasts(int second) {
    return gain(second) - delays[second];
  }

  double settledGain() {
    return gain(SETTLED - 1);
  }

  /** Runs the plant four times and looks at several places. */
  static List<Truth> of(Change change, Rig rig, At at, List<Place> places) {
    double[][] before = run(rig, at, places);
    double[][] after = run(change.both(rig), at, places);
    double[][] capacityAlone = run(change.capacity(rig), at, places);
    double[][] conductanceAlone = run(change.conductance(rig), at, places);
    List<Truth> truths = new ArrayList<>();
    for (int p = 0; p < places.size(); p++) {
      double[] delays = new double[SETTLED];
      for (int i = 0; i < SETTLED; i++) {
        delays[i] =
            ((before[p][i] - capacityAlone[p][i]) + (conductanceAlone[p][i] - after[p][i])) / 2;
      }
      truths.add(new Truth(before[p], after[p], delays));
    }
    return truths;
  }

  private static double[][] run(Rig rig, At at, List<Place> places) {
    Surroundings around = new Surroundings(0, at.outsideCelsius(), at.kilopascals(), 0);
    Plant plant =
        new Plant(
            rig.with(RigTrait.SENSOR_NOISE, 0),
            new WarmStart(at.chargeCelsius(), at.engineCelsius(), 95, 80, at.metresPerSecond()),
            around,
            1);
    Duty duty =
        new Duty.HoldTorque(
            at.gear(), at.metresPerSecond(), at.newtonMetres(), at.coolingMetresPerSecond());
    double[][] courses = new double[places.size()][SETTLED];
    double keeps =
        -Math.expm1(-Plant.STEP_SECONDS / (SENSOR_SECONDS * rig.of(RigTrait.SENSOR_LAG)));
    double[] sensors = places.stream().mapToDouble(place -> place.of(plant.state())).toArray();
    for (int second = 0; second < SETTLED; second++) {
      for (int p = 0; p < sensors.length; p++) {
        courses[p][second] = sensors[p];
      }
      for (int step = 0; step < 20; step++) {
        plant.step(around, duty);
        PlantState state = plant.state();
        for (int p = 0; p < sensors.length; p++) {
          sensors[p] += (places.get(p).of(state) - sensors[p]) * keeps;
        }
      }
    }
    return courses;
  }
}
