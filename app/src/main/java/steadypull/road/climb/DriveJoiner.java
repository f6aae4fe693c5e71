package steadypull.road.climb;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.road.FlatGround;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;

/**
 * Joins passes that a short gap has parted: a plug that was loose for a minute does not make two
 * climbs of one. One thread.
 */
final class DriveJoiner {
  /** Longer, and nobody knows what the vehicle did meanwhile (our choice). */
  private static final double LONGEST_GAP_SECONDS = 180;

  private final List<List<DrivePoint>> drives = new ArrayList<>();
  private List<DrivePoint> drive = new ArrayList<>();
  private Optional<RoadPass> before = Optional.empty();
  private double metresBefore;
  private double heightBefore;

  private DriveJoiner() {}

  /** The drives of a trip's passes, in the order of time, each with a point or more. */
  static List<List<DrivePoint>> join(List<RoadPass> passes) {
    DriveJoiner joiner = new DriveJoiner();
    passes.forEach(joiner::add);
    joiner.end();
    return List.copyOf(joiner.drives);
  }

  private void add(RoadPass pass) {
    double gap = before.map(last -> seconds(last, pass)).orElse(0.0);
    if (gap > LONGEST_GAP_SECONDS) {
      end();
    }
    PassPoint first = pass.points().getFirst();
    if (drive.isEmpty()) {
      metresBefore = -first.metres();
      heightBefore = -first.heightMetres();
    } else {
      bridge(before.orElseThrow(), pass, gap);
    }
    double gapSeconds = drive.isEmpty() ? 0 : gap;
    for (PassPoint point : pass.points()) {
      drive.add(
          new DrivePoint(
              metresBefore + point.metres(),
              point.seconds(),
              point.metres(),
              heightBefore + point.heightMetres(),
              point.place(),
              gapSeconds));
      gapSeconds = 0;
    }
    before = Optional.of(pass);
  }

  private void bridge(RoadPass last, RoadPass pass, double gap) {
    PassPoint from = last.points().getLast();
    PassPoint to = pass.points().getFirst();
    Optional<Double> between = metresBetween(from, to);
    double metres = between.orElse((endSpeed(last) + startSpeed(pass)) / 2 * gap);
    metresBefore = drive.getLast().metres() + metres - to.metres();
    // Where places are told, altitudes are; else heights begin anew with each pass.
    if (between.isEmpty()) {
      double rise = metres * (from.grade() + to.grade()) / 2;
      heightBefore = drive.getLast().height() + rise - to.heightMetres();
    }
  }

  private void end() {
    if (!drive.isEmpty()) {
      drives.add(drive);
    }
    drive = new ArrayList<>();
    before = Optional.empty();
  }

  private static double seconds(RoadPass from, RoadPass to) {
    return to.points().getFirst().seconds() - from.points().getLast().seconds();
  }

  /** The straight way over a gap: a road is longer, by a few per cent on most. */
  private static Optional<Double> metresBetween(PassPoint from, PassPoint to) {
    return from.place()
        .flatMap(
            start ->
                to.place()
                    .map(
                        end ->
                            FlatGround.around(start.latitudeDegrees(), start.longitudeDegrees())
                                .spot(end.latitudeDegrees(), end.longitudeDegrees())
                                .distanceTo(new FlatGround.Spot(0, 0))));
  }

  private static double endSpeed(RoadPass pass) {
    return speed(pass, pass.points().size() - 2);
  }

  private static double startSpeed(RoadPass pass) {
    return speed(pass, 0);
  }

  private static double speed(RoadPass pass, int point) {
    if (pass.points().size() < 2) {
      return 0;
    }
    PassPoint from = pass.points().get(point);
    PassPoint to = pass.points().get(point + 1);
    return (to.metres() - from.metres()) / Math.max(1, to.seconds() - from.seconds());
  }
}
