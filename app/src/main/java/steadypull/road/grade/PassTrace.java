package steadypull.road.grade;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.LatestSamples;
import steadypull.road.PassPoint;
import steadypull.road.PositionFix;
import steadypull.road.RoadPass;
import steadypull.vehicle.Vehicle;

/**
 * Makes passes over roads out of a finished trip's samples. One thread.
 *
 * <p>Keeps some 100 octets for each second until it is finished.
 */
public final class PassTrace {
  private static final long SECOND_MICROS = 1_000_000;

  /** Points lie no closer together, m. */
  private static final double POINT_METRES = 20;

  private final DerivedChannels derived;
  private final LatestSamples located = new LatestSamples();
  private final List<RoadSecond> seconds = new ArrayList<>();
  private final List<Optional<PositionFix>> fixes = new ArrayList<>();
  private final List<RoadPass> passes = new ArrayList<>();
  private long nextMicros = SECOND_MICROS;
  private double metresBefore;

  /** Traces a trip of one vehicle. */
  public PassTrace(Vehicle vehicle) {
    derived = new DerivedChannels(vehicle);
  }

  /** Takes a measured sample; times do not run backwards. Derived ones are left aside. */
  public void accept(Sample sample) {
    while (nextMicros <= sample.timeMicros()) {
      tick();
    }
    if (Channels.located().contains(sample.channel())) {
      located.accept(sample);
    }
    if (!Channels.derived().contains(sample.channel())) {
      derived.accept(sample);
    }
  }

  /** The passes of the trip, in the order of time; empty if it told no speed. */
  public List<RoadPass> finish() {
    tick();
    finishPass();
    return List.copyOf(passes);
  }

  private void tick() {
    derived.look(nextMicros).ifPresentOrElse(this::add, this::finishPass);
    nextMicros += SECOND_MICROS;
  }

  private void add(RoadSecond second) {
    seconds.add(second);
    fixes.add(PositionFix.ofSecondBefore(located, nextMicros));
  }

  private void finishPass() {
    if (seconds.isEmpty()) {
      return;
    }
    List<GradeEstimate> grades = GradeSmoother.smooth(seconds);
    List<Optional<PassPoint.Place>> places = PlaceSmoother.smooth(seconds, fixes);
    List<PassPoint> points = new ArrayList<>();
    for (int i = 0; i < grades.size(); i++) {
      double metres = metresBefore + grades.get(i).metres();
      if (points.isEmpty() || metres - points.getLast().metres() >= POINT_METRES) {
        points.add(point(grades.get(i), places.get(i), metres));
      }
    }
    metresBefore += grades.getLast().metres();
    passes.add(new RoadPass(points));
    seconds.clear();
    fixes.clear();
  }

  private static PassPoint point(
      GradeEstimate grade, Optional<PassPoint.Place> place, double metres) {
    return new PassPoint(
        grade.seconds(), metres, place, grade.heightMetres(), grade.grade(), grade.error());
  }
}
