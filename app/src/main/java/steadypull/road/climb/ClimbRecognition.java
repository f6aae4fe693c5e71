package steadypull.road.climb;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Tells which climb a drive has found. Stateless but for what it was given; the known climbs'
 * thread.
 *
 * <p>A pass is the known climb if it lies along its line in its direction and begins and ends where
 * it does; it is a part if it lies within; one that leads beyond a known climb is another. Where
 * several fit, as on a road and the old one beside it, the nearest is meant.
 */
public final class ClimbRecognition {
  /** Fewer places than one in 200 m may be anywhere. */
  private static final double METRES_PER_SPOT = 200;

  /** A line that begins or ends farther from its climb's ends would lead later passes astray. */
  private static final double END_WITHIN_METRES = 100;

  private final KnownClimbs known;

  /** Recognises the climbs of a library. */
  public ClimbRecognition(KnownClimbs known) {
    this.known = known;
  }

  /** Tells which climb it is. */
  public ClimbIdentity identify(Climb climb) {
    if (climb.spots().size() < climb.lengthMetres() / METRES_PER_SPOT) {
      return new ClimbIdentity.Unplaced();
    }
    ClimbLine line = ClimbLine.through(climb.spots());
    List<KnownClimb> near = known.near(line.bounds());
    return best(climb, near).orElseGet(() -> unknown(climb, line));
  }

  private ClimbIdentity unknown(Climb climb, ClimbLine line) {
    if (!climb.isWhole()) {
      return new ClimbIdentity.Fragment();
    }
    return climb.spots().getFirst().metres() <= END_WITHIN_METRES
            && climb.spots().getLast().metres() >= climb.lengthMetres() - END_WITHIN_METRES
        ? new ClimbIdentity.New(remembered(climb, line))
        : new ClimbIdentity.Unplaced();
  }

  private record Candidate(KnownClimb climb, LineMatch match) {}

  private static Optional<ClimbIdentity> best(Climb climb, List<KnownClimb> near) {
    List<Candidate> candidates =
        near.stream()
            .flatMap(
                each -> LineMatch.of(climb, each).map(match -> new Candidate(each, match)).stream())
            .sorted(Comparator.comparingDouble(each -> each.match().asideMetres()))
            .toList();
    Optional<ClimbIdentity> whole =
        candidates.stream()
            .filter(each -> each.match().isWhole())
            .findFirst()
            .map(each -> new ClimbIdentity.Known(each.climb()));
    return whole.or(
        () ->
            candidates.stream()
                .filter(each -> each.match().isPart())
                .findFirst()
                .map(each -> part(each.climb(), each.match())));
  }

  private static ClimbIdentity part(KnownClimb climb, LineMatch match) {
    return new ClimbIdentity.Part(
        climb, Math.max(0, match.startMetres()), Math.min(match.knownMetres(), match.endMetres()));
  }

  private KnownClimb remembered(Climb climb, ClimbLine line) {
    // Another climb of the same cell and direction may have the first id.
    List<String> taken = known.near(ClimbId.cell(climb)).stream().map(KnownClimb::id).toList();
    String id =
        ClimbId.choices(climb).filter(each -> !taken.contains(each)).findFirst().orElseThrow();
    return new KnownClimb(id, "", line, climb.lengthMetres(), climb.riseMetres());
  }
}
