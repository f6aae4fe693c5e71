package steadypull.drive;

import java.util.List;
import java.util.Optional;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;
import steadypull.store.TripEvent;

/**
 * The road ahead as everything that looks ahead is told of it. Whoever knows roads says something
 * new each second; here it is held, moved on by what the vehicle drives, and told anew only where
 * that is no longer true, so that a trip can keep every word of it. Pipeline thread only.
 */
final class RoadTold {
  /** A better word on the same road waits so long. */
  private static final long PATIENCE_MICROS = 15_000_000;

  /** As far as a forecast reaches at 120 km/h. */
  private static final double FARTHEST_METRES = 20_000;

  /** So much more than what is told is worth a word, metres and share. */
  private static final double MORE_METRES = 1000;

  private static final double MORE_SHARE = 0.25;

  /** So much less is one at once. */
  private static final double LESS_METRES = 100;

  /** Grades that differ by more in the mean, a fraction; the first kilometres count. */
  private static final double OTHER_GRADE = 0.002;

  private static final double COMPARED_METRES = 3000;
  private static final double OTHER_ODDS = 0.1;

  private RoadAhead told = new RoadAhead.Unknown();
  private long toldMicros;
  private double metresSince;
  private boolean isFresh;

  /**
   * Takes what the vehicle has driven in the second that passes, metres. What was told in it was
   * told of its end.
   */
  void moved(double metres) {
    metresSince = isFresh ? 0 : metresSince + metres;
    isFresh = false;
  }

  /**
   * Hears what is known now, before the second's metres are taken. The event lies a moment before
   * the second is over, so that it is taken before everything that is made of the second when the
   * trip is run again.
   *
   * @param timeMicros a whole second
   * @param metres driven in it
   * @return the event that tells of it anew, if it is to be told
   */
  Optional<TripEvent> hear(long timeMicros, double metres, RoadAhead known) {
    RoadAhead now = ahead(metresSince + metres);
    boolean isPatient = timeMicros - toldMicros < PATIENCE_MICROS;
    if (isSame(now, known) && (isPatient || isAsGood(now, known))) {
      return Optional.empty();
    }
    TripEvent event = RoadNews.event(timeMicros - 1, near(known));
    take(event);
    return Optional.of(event);
  }

  /** Takes what was told at its moment. */
  void take(TripEvent event) {
    told = RoadNews.read(event);
    toldMicros = event.timeMicros();
    isFresh = true;
  }

  /** The road ahead from where the vehicle is now. */
  RoadAhead ahead() {
    return ahead(metresSince);
  }

  private RoadAhead ahead(double metres) {
    return switch (told) {
      case RoadAhead.Unknown unknown -> unknown;
      case RoadAhead.Ungraded ungraded -> ungraded;
      case RoadAhead.Known known -> moved(known, metres);
    };
  }

  private static RoadAhead moved(RoadAhead.Known known, double metres) {
    int pieces = (int) Math.round(metres / known.certain().pieceMetres());
    return pieces <= known.certain().size()
        ? new RoadAhead.Known(
            known.certain().from(pieces), known.branches(), known.origin())
        : new RoadAhead.Unknown();
  }

  private static RoadAhead near(RoadAhead ahead) {
    return switch (ahead) {
      case RoadAhead.Unknown unknown -> unknown;
      case RoadAhead.Ungraded ungraded -> ungraded;
      case RoadAhead.Known known -> {
        int most = (int) (FARTHEST_METRES / known.certain().pieceMetres());
        yield known.certain().size() > most
            ? new RoadAhead.Known(known.certain().first(most), List.of(), known.origin())
            : known;
      }
    };
  }

  /** Whether the same kind of thing is known, as certain and with the same ways to choose from. */
  private static boolean isSame(RoadAhead now, RoadAhead next) {
    if (!(now instanceof RoadAhead.Known before && near(next) instanceof RoadAhead.Known after)) {
      return now.getClass() == next.getClass();
    }
    return before.origin() == after.origin()
        && isSame(before.branches(), after.branches())
        && after.certain().lengthMetres() > before.certain().lengthMetres() - LESS_METRES;
  }

  private static boolean isSame(List<RoadAhead.Branch> before, List<RoadAhead.Branch> after) {
    boolean isSame = before.size() == after.size();
    for (int i = 0; isSame && i < before.size(); i++) {
      isSame = Math.abs(before.get(i).odds() - after.get(i).odds()) < OTHER_ODDS;
    }
    return isSame;
  }

  private static boolean isAsGood(RoadAhead now, RoadAhead next) {
    if (!(now instanceof RoadAhead.Known before && near(next) instanceof RoadAhead.Known after)) {
      return true;
    }
    double had = before.certain().lengthMetres();
    double more = after.certain().lengthMetres() - had;
    return more < Math.max(MORE_METRES, MORE_SHARE * had)
        && difference(before.certain(), after.certain()) < OTHER_GRADE;
  }

  /** Mean difference of grades over the next kilometres. */
  private static double difference(GradeProfile before, GradeProfile after) {
    int compared =
        Math.min(
            Math.min(before.size(), after.size()),
            (int) (COMPARED_METRES / before.pieceMetres()));
    double sum = 0;
    for (int piece = 0; piece < compared; piece++) {
      sum += Math.abs(before.grade(piece) - after.grade(piece));
    }
    return compared == 0 ? 0 : sum / compared;
  }
}
