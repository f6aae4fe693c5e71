package steadypull.road.load;

import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.exception.MathIllegalArgumentException;
import steadypull.road.RoadLoad;

/**
 * A load at the wheels and the road that it stands for: on a dynamometer a power at a roller speed,
 * outside a grade at that speed. Immutable.
 *
 * @param load of the rig in its air
 * @param metresPerSecond steady speed, above 0
 * @param grade rise over run, a fraction; negative downhill
 */
public record GradeEquivalent(RoadLoad load, double metresPerSecond, double grade) {
  private static final double SLOWEST = 0.5;
  private static final double FASTEST = 100;
  private static final double SPEED_PRECISION = 1e-6;
  private static final int MOST_TRIALS = 200;

  public GradeEquivalent {
    if (!(metresPerSecond > 0 && Double.isFinite(grade))) {
      throw new IllegalArgumentException(
          "A load on the road has a speed above 0 and a grade, found %s m/s, %s"
              .formatted(metresPerSecond, grade));
    }
  }

  /** The road on which a rig takes that power at that speed; empty if no road is that steep. */
  public static Optional<GradeEquivalent> ofWheelPower(
      RoadLoad load, double metresPerSecond, double kilowatts) {
    OptionalDouble grade =
        load.gradeUnder(kilowatts * 1000 / metresPerSecond - load.dragNewtons(metresPerSecond));
    return grade.isPresent()
        ? Optional.of(new GradeEquivalent(load, metresPerSecond, grade.getAsDouble()))
        : Optional.empty();
  }

  /** Force at the wheels; negative if the rig must be braked. */
  public double newtons() {
    return load.forceNewtons(metresPerSecond, grade);
  }

  /** Power at the wheels; negative if the rig must be braked. */
  public double kilowatts() {
    return load.kilowatts(metresPerSecond, grade);
  }

  /** The road on which another rig, or this one in other air, takes the same power. */
  public Optional<GradeEquivalent> of(RoadLoad other) {
    return ofWheelPower(other, metresPerSecond, kilowatts());
  }

  /** The road on which the same power holds another speed, in m/s. */
  public Optional<GradeEquivalent> at(double otherMetresPerSecond) {
    return ofWheelPower(load, otherMetresPerSecond, kilowatts());
  }

  /**
   * The speed that the same power holds on another grade; empty where the rig rolls by itself, or
   * beyond 360 km/h.
   */
  public Optional<GradeEquivalent> on(double otherGrade) {
    double power = kilowatts();
    if (!(power > 0)) {
      return Optional.empty();
    }
    try {
      double speed =
          new BracketingNthOrderBrentSolver(SPEED_PRECISION, 5)
              .solve(
                  MOST_TRIALS,
                  metres -> load.kilowatts(metres, otherGrade) - power,
                  SLOWEST,
                  FASTEST);
      return Optional.of(new GradeEquivalent(load, speed, otherGrade));
    } catch (MathIllegalArgumentException noSuchSpeed) {
      // the ends lie on the same side: too steep for the power, or too little to need it
      return Optional.empty();
    }
  }
}
