package steadypull.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import steadypull.drive.RoadState;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;

/**
 * Height of the road ahead over the coming three minutes at the present speed: what is certain, and
 * behind it the likeliest way, or the last grade held on. Immutable.
 *
 * @param seconds from now, rising, the first 0
 * @param metres heights relative to here, as many
 * @param certainSeconds up to here the road is known; 0 if it is not
 */
record GroundAhead(List<Double> seconds, List<Double> metres, double certainSeconds) {
  /** A standing vehicle is shown the road as if it moved off gently. */
  private static final double LEAST_METRES_PER_SECOND = 5;

  private static final double KILOMETRES_PER_HOUR = 3.6;
  private static final double PER_CENT = 0.01;

  /** A way that is less likely than not is not drawn. */
  private static final double LIKELY = 0.5;

  /** The grade is told for the stretch around its label, this far to each side. */
  private static final double LABEL_SECONDS = 15;

  GroundAhead {
    seconds = List.copyOf(seconds);
    metres = List.copyOf(metres);
  }

  static GroundAhead of(RoadState road) {
    return switch (road.ahead()) {
      case RoadAhead.Unknown() -> held(road);
      case RoadAhead.Ungraded() -> held(road);
      case RoadAhead.Known known -> known(road, known);
    };
  }

  private static GroundAhead held(RoadState road) {
    double speed = road.speedKilometresPerHour().orElse(0) / KILOMETRES_PER_HOUR;
    Builder ground = new Builder(1);
    ground.straight(speed * road.gradePercent().orElse(0) * PER_CENT);
    return ground.build(0);
  }

  private static GroundAhead known(RoadState road, RoadAhead.Known known) {
    double speed = road.speedKilometresPerHour().orElse(0) / KILOMETRES_PER_HOUR;
    Builder ground = new Builder(Math.max(LEAST_METRES_PER_SECOND, speed));
    ground.along(known.certain());
    double certain = ground.lastSeconds();
    known.branches().stream()
        .findFirst()
        .filter(branch -> branch.odds() >= LIKELY)
        .ifPresent(branch -> ground.along(branch.profile()));
    ground.hold(road.gradePercent().orElse(0) * PER_CENT);
    return ground.build(Math.min(certain, CourseWords.HORIZON_SECONDS));
  }

  /** Whether anything of the road ahead is known. */
  boolean isKnown() {
    return certainSeconds > 0;
  }

  /** The lowest and the highest place of it. */
  double lowestMetres() {
    return metres.stream().mapToDouble(Double::doubleValue).min().orElse(0);
  }

  double highestMetres() {
    return metres.stream().mapToDouble(Double::doubleValue).max().orElse(0);
  }

  /** Height at a moment, 0 to 180 s from now. */
  double metresAt(double moment) {
    int next = 1;
    while (next < seconds.size() - 1 && seconds.get(next) < moment) {
      next++;
    }
    double from = seconds.get(next - 1);
    double share = (moment - from) / Math.max(1e-9, seconds.get(next) - from);
    return metres.get(next - 1) + share * (metres.get(next) - metres.get(next - 1));
  }

  /** Mean grade around a moment, per cent; empty where the road is not certain. */
  OptionalDouble gradePercentAround(double moment, RoadState road) {
    if (moment > certainSeconds) {
      return OptionalDouble.empty();
    }
    double from = Math.max(0, moment - LABEL_SECONDS);
    double to = Math.min(certainSeconds, moment + LABEL_SECONDS);
    double speed =
        Math.max(
            LEAST_METRES_PER_SECOND, road.speedKilometresPerHour().orElse(0) / KILOMETRES_PER_HOUR);
    return to <= from
        ? OptionalDouble.empty()
        : OptionalDouble.of((metresAt(to) - metresAt(from)) / ((to - from) * speed) / PER_CENT);
  }

  /** Puts the line together from here on. */
  private static final class Builder {
    private final List<Double> seconds = new ArrayList<>(List.of(0.0));
    private final List<Double> metres = new ArrayList<>(List.of(0.0));
    private final double metresPerSecond;
    private double grade = Double.NaN;

    Builder(double metresPerSecond) {
      this.metresPerSecond = metresPerSecond;
    }

    double lastSeconds() {
      return seconds.getLast();
    }

    void along(GradeProfile profile) {
      double step = profile.pieceMetres() / metresPerSecond;
      for (int piece = 0;
          piece < profile.size() && lastSeconds() < CourseWords.HORIZON_SECONDS;
          piece++) {
        grade = profile.grade(piece);
        add(step, step * metresPerSecond * grade);
      }
    }

    /** Goes on at the last grade, or at the present one where none is known ahead. */
    void hold(double present) {
      straight(metresPerSecond * (Double.isNaN(grade) ? present : grade));
    }

    void straight(double metresEachSecond) {
      double rest = CourseWords.HORIZON_SECONDS - lastSeconds();
      if (rest > 0) {
        add(rest, rest * metresEachSecond);
      }
    }

    private void add(double step, double rise) {
      seconds.add(seconds.getLast() + step);
      metres.add(metres.getLast() + rise);
    }

    GroundAhead build(double certainSeconds) {
      return new GroundAhead(seconds, metres, certainSeconds);
    }
  }
}
