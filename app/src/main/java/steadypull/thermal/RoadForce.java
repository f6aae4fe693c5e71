package steadypull.thermal;

import steadypull.road.RoadLoad;
import steadypull.road.grade.DerivedChannels;

/**
 * What the rig really asks of the engine on roads whose grade is known, against what the figures
 * entered for it say: one factor on everything that goes with mass, one force besides (wind, drag
 * and rolling that are not as entered). Both are learnt from stretches of a quarter of a minute by
 * a Kalman filter of two states (Simon, Optimal State Estimation, 2006, section 5.1). Pipeline
 * thread only.
 */
final class RoadForce {
  private static final double STRETCH_SECONDS = 15;

  /** Owners weigh their rig to some 8 %, and torque is right within 5 % (common practice). */
  private static final double FACTOR_SPREAD = 0.09;

  /** 5 m/s of headwind on 4 m2 at 25 m/s are 600 N; rolling and drag add (computed). */
  private static final double FORCE_SPREAD = 600;

  /** Wind and the road's direction turn within so long (estimated). */
  private static final double FORCE_SECONDS = 900;

  private static final double FACTOR_WANDER_PER_HOUR = 0.03;

  /** Gusts, whole km/h and gear changes over a stretch, N (estimated). */
  private static final double STRETCH_NEWTONS = 700;

  private static final double LEAST_METRES_PER_SECOND = 5;
  private static final double LEAST_KILOWATTS = 15;

  private double factor = 1;
  private double force;
  private double factorVariance = FACTOR_SPREAD * FACTOR_SPREAD;
  private double forceVariance = FORCE_SPREAD * FORCE_SPREAD;
  private double covariance;

  private double seconds;
  private double drivenSeconds;
  private double metres;
  private double kilojoules;
  private double gradeMetres;
  private double firstMetresPerSecond;
  private double lastMetresPerSecond;

  /**
   * Takes a moment on a known grade.
   *
   * @param span seconds that it stands for
   * @param kilowatts of the engine
   * @param grade here, a fraction
   */
  void accept(RoadLoad load, double span, double kilowatts, double metresPerSecond, double grade) {
    if (kilowatts < LEAST_KILOWATTS || metresPerSecond < LEAST_METRES_PER_SECOND) {
      interrupt();
      return;
    }
    if (seconds == 0) {
      firstMetresPerSecond = metresPerSecond;
    } else {
      double driven = (metresPerSecond + lastMetresPerSecond) / 2 * span;
      metres += driven;
      drivenSeconds += span;
      kilojoules += kilowatts * span;
      gradeMetres += grade * driven;
    }
    lastMetresPerSecond = metresPerSecond;
    seconds += span;
    if (seconds > STRETCH_SECONDS) {
      learn(load);
      interrupt();
    }
  }

  /** Nothing is told for a while, or the brakes may be on. */
  void interrupt() {
    seconds = 0;
    drivenSeconds = 0;
    metres = 0;
    kilojoules = 0;
    gradeMetres = 0;
  }

  private void learn(RoadLoad load) {
    if (metres <= 0) {
      return;
    }
    double grade = gradeMetres / metres;
    double gained =
        (lastMetresPerSecond * lastMetresPerSecond - firstMetresPerSecond * firstMetresPerSecond)
            / 2;
    double byMass =
        load.gradeNewtons(grade)
            + load.rollingNewtons(grade)
            + load.inertialKilograms() * gained / metres;
    double drag = load.dragNewtons(metres / drivenSeconds);
    double seen = kilojoules * 1000 * DerivedChannels.DRIVELINE_EFFICIENCY / metres;
    wander();
    correct(byMass, seen - drag - factor * byMass - force);
  }

  private void wander() {
    double kept = Math.exp(-seconds / FORCE_SECONDS);
    force *= kept;
    covariance *= kept;
    forceVariance = kept * kept * forceVariance + (1 - kept * kept) * FORCE_SPREAD * FORCE_SPREAD;
    factorVariance += FACTOR_WANDER_PER_HOUR * FACTOR_WANDER_PER_HOUR * seconds / 3600;
  }

  private void correct(double byMass, double surprise) {
    double factorGain = factorVariance * byMass + covariance;
    double forceGain = covariance * byMass + forceVariance;
    double variance = byMass * factorGain + forceGain + STRETCH_NEWTONS * STRETCH_NEWTONS;
    factor += factorGain / variance * surprise;
    force += forceGain / variance * surprise;
    factorVariance -= factorGain * factorGain / variance;
    covariance -= factorGain * forceGain / variance;
    forceVariance -= forceGain * forceGain / variance;
  }

  /** Share of the present force that is left after some seconds, 0 to 1. */
  static double kept(double seconds) {
    return Math.exp(-seconds / FORCE_SECONDS);
  }

  /** A rig as one draw has it. */
  record Draw(double factor, double force, double forceToCome) {
    /** Newtons at the wheels at a steady speed on a grade, but for what is {@link #beside}. */
    double newtons(RoadLoad load, double metresPerSecond, double grade) {
      return factor * (load.gradeNewtons(grade) + load.rollingNewtons(grade))
          + load.dragNewtons(metresPerSecond);
    }

    /** What acts beside them, by the share of the present one that is {@link #kept}, newtons. */
    double beside(double kept) {
      return force * kept + forceToCome * Math.sqrt(1 - kept * kept);
    }
  }

  /**
   * One draw.
   *
   * @param first standard normal number, as the other two
   */
  Draw draw(double first, double second, double third) {
    double factorSpread = Math.sqrt(factorVariance);
    double shared = covariance / factorSpread;
    double own = Math.sqrt(Math.max(0, forceVariance - shared * shared));
    return new Draw(
        factor + factorSpread * first, force + shared * first + own * second, FORCE_SPREAD * third);
  }
}
