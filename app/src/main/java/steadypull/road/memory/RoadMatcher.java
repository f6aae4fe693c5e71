package steadypull.road.memory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import steadypull.road.FlatGround;
import steadypull.road.GradeProfile;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadSight;

/**
 * Recognises the remembered road under a moving vehicle and looks ahead along it. Keeps the places
 * where the vehicle may be with their probabilities, "on a road that nobody knows" among them:
 * metres driven move them on, fixes weigh them (a hidden Markov model, forwards only, as {@link
 * Alignment} cites). Pipeline thread only.
 */
public final class RoadMatcher implements RoadSight {
  /** What is less likely than that is not told as certain. */
  private static final double SURE = 0.9;

  /** A receiver's wandering, m (estimated on open drives). */
  private static final double FIX_METRES = 4;

  private static final double FARTHEST_METRES = 35;
  private static final double LONGEST_STRETCH_METRES = 80;

  /** How much of the difference along the road is taken over from each fix. */
  private static final double ALONG_GAIN = 0.1;

  /** Without a fix for longer than that nobody knows where the vehicle is, m. */
  private static final double BLIND_METRES = 4000;

  private static final double GROUND_METRES = 8000;
  private static final double LEAST_TOLD = 0.03;

  private final RoadGraph graph;
  private final FixTrail trail = new FixTrail();
  private final JumpWatch jumps = new JumpWatch();
  private final Whereabouts places = new Whereabouts();
  private @Nullable FlatGround ground;

  private double odometer;
  private double fixOdometer;
  private double fixSeconds;

  /** Looks at a memory, of which nothing was recognised yet. */
  public RoadMatcher(RoadMemory memory) {
    this(memory.graph());
  }

  RoadMatcher(RoadGraph graph) {
    this.graph = graph;
  }

  @Override
  public void moved(double seconds, double metres) {
    odometer += metres;
    FlatGround here = ground;
    if (here == null || metres <= 0) {
      return;
    }
    places.goOn(hypothesis -> hypothesis.moved(metres, graph, here));
    if (odometer - fixOdometer > BLIND_METRES) {
      places.lose();
    }
  }

  /**
   * Those tiles of the shelf are others now: somebody has learned or forgotten. What was recognised
   * stays as far as it is still known.
   */
  public void changed(Set<TileKey> keys) {
    graph.tiles().reread(keys);
    FlatGround here = ground;
    if (here == null || keys.isEmpty()) {
      return;
    }
    places.keep(hypothesis -> hypothesis.still(graph, here));
  }

  @Override
  public void fixed(PositionFix fix) {
    if (!jumps.isBelievable(fix, odometer)) {
      return;
    }
    FlatGround here = groundAround(fix);
    double seconds = Math.clamp(fix.seconds() - fixSeconds, 0, 5);
    FlatGround.Spot told = here.spot(fix.latitudeDegrees(), fix.longitudeDegrees());
    boolean isStanding = odometer - fixOdometer < 0.5;
    if (jumps.wasCarried()) {
      places.lose();
    }
    FlatGround.Spot spot = trail.accept(fix.seconds(), odometer, told);
    fixSeconds = fix.seconds();
    fixOdometer = odometer;
    OptionalDouble heading = trail.heading();
    if (isStanding || heading.isEmpty()) {
      return;
    }
    places.enter(near(spot, heading.getAsDouble(), here), seconds);
    weigh(spot, heading.getAsDouble(), SightCosts.liveWeight(seconds), here);
    places.normalise();
  }

  private FlatGround groundAround(PositionFix fix) {
    FlatGround here = ground;
    if (here != null) {
      FlatGround.Spot spot = here.spot(fix.latitudeDegrees(), fix.longitudeDegrees());
      if (Math.hypot(spot.east(), spot.north()) < GROUND_METRES) {
        return here;
      }
    }
    FlatGround fresh = FlatGround.around(fix.latitudeDegrees(), fix.longitudeDegrees());
    ground = fresh;
    trail.restart();
    places.on(fresh);
    return fresh;
  }

  /** The nearest place on each road around, of weight 1. */
  private List<Hypothesis> near(FlatGround.Spot spot, double heading, FlatGround here) {
    List<Hypothesis> found = new ArrayList<>();
    for (Stretch stretch :
        graph.beginningNear(
            here.latitude(spot.north()),
            here.longitude(spot.east()),
            FARTHEST_METRES + LONGEST_STRETCH_METRES,
            here)) {
      double share = stretch.shareNear(spot);
      double turned = Math.IEEEremainder(heading - stretch.heading(), 2 * Math.PI);
      if (stretch.at(share).distanceTo(spot) <= FARTHEST_METRES && SightCosts.isSameWay(turned)) {
        found.add(new Hypothesis(stretch, share, 1));
      }
    }
    found.sort(Comparator.comparingDouble(place -> place.spot().distanceTo(spot)));
    List<Hypothesis> apart = new ArrayList<>();
    for (Hypothesis candidate : found) {
      if (apart.stream().noneMatch(candidate::isBeside)) {
        apart.add(candidate);
      }
    }
    return apart;
  }

  private void weigh(FlatGround.Spot spot, double heading, double weight, FlatGround here) {
    places.weigh(
        hypothesis -> {
          double along = along(hypothesis, spot);
          double cost = cost(hypothesis, spot, along, heading);
          return hypothesis
              .weighed(Math.exp(-weight * cost))
              .moved(ALONG_GAIN * along, graph, here);
        });
  }

  private static double along(Hypothesis hypothesis, FlatGround.Spot spot) {
    double direction = hypothesis.stretch().heading();
    FlatGround.Spot at = hypothesis.spot();
    return (spot.east() - at.east()) * Math.cos(direction)
        + (spot.north() - at.north()) * Math.sin(direction);
  }

  private static double cost(
      Hypothesis hypothesis, FlatGround.Spot spot, double along, double heading) {
    Stretch stretch = hypothesis.stretch();
    double direction = stretch.heading();
    FlatGround.Spot at = hypothesis.spot();
    double across =
        -(spot.east() - at.east()) * Math.sin(direction)
            + (spot.north() - at.north()) * Math.cos(direction);
    return SightCosts.across(
            Math.hypot(across, beyond(along)),
            Math.hypot(FIX_METRES, stretch.placeErrorMetres(hypothesis.share())))
        + SightCosts.heading(Math.IEEEremainder(heading - direction, 2 * Math.PI));
  }

  /** What is too far ahead or behind to be the odometer's error counts like metres aside. */
  private static double beyond(double along) {
    return Math.max(0, Math.abs(along) - 25);
  }

  /** The node nearest to where the vehicle most likely is; empty where nothing was recognised. */
  Optional<RoadNode> likeliest() {
    return places
        .likeliest()
        .map(best -> best.share() < 0.5 ? best.stretch().from() : best.stretch().to());
  }

  @Override
  public RoadAhead ahead() {
    return ahead(graph);
  }

  /** The same with the grades of another graph, which has the same nodes. */
  RoadAhead ahead(RoadGraph graded) {
    FlatGround here = ground;
    Optional<Hypothesis> likeliest = places.likeliest();
    if (here == null || likeliest.isEmpty()) {
      return new RoadAhead.Unknown();
    }
    LookAhead look = new LookAhead(graded, here);
    Hypothesis best = likeliest.get();
    return places.sureness(best) >= SURE
        ? look.from(best.stretch(), best.share())
        : undecided(look);
  }

  /** Several roads may be under the vehicle: each is a way that may be taken. */
  private RoadAhead undecided(LookAhead look) {
    List<RoadAhead.Branch> branches = new ArrayList<>();
    double known = 0;
    for (Hypothesis hypothesis : places.odds()) {
      double odds = hypothesis.weight();
      if (odds >= LEAST_TOLD) {
        known += odds;
        GradeProfile profile = look.certainFrom(hypothesis.stretch(), hypothesis.share());
        if (profile.size() > 0) {
          branches.add(new RoadAhead.Branch(Math.min(1, odds), profile));
        }
      }
    }
    branches.sort(Comparator.comparingDouble(RoadAhead.Branch::odds).reversed());
    return known < SURE || branches.isEmpty()
        ? new RoadAhead.Unknown()
        : new RoadAhead.Known(GradeProfile.none(KnownWay.PIECE_METRES), branches);
  }
}
