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

  /** In a second somebody on an unknown road comes upon a known one, or the reverse (estimated). */
  private static final double ENTERS_PER_SECOND = 0.03;

  private static final double LEAVES_PER_SECOND = 0.002;

  /** A receiver's wandering, m (estimated on open drives). */
  private static final double FIX_METRES = 4;

  private static final double FARTHEST_METRES = 35;
  private static final double LONGEST_STRETCH_METRES = 80;

  /** How much of the difference along the road is taken over from each fix. */
  private static final double ALONG_GAIN = 0.1;

  private static final double SAME_PLACE_METRES = 60;

  /** Without a fix for longer than that nobody knows where the vehicle is, m. */
  private static final double BLIND_METRES = 4000;

  private static final double GROUND_METRES = 8000;
  private static final double LEAST_WEIGHT = 1e-6;
  private static final int MOST_HYPOTHESES = 24;
  private static final double LEAST_TOLD = 0.03;

  private final RoadGraph graph;
  private final FixTrail trail = new FixTrail();
  private final JumpWatch jumps = new JumpWatch();
  private List<Hypothesis> hypotheses = new ArrayList<>();
  private double unknownWeight = 1;
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
    List<Hypothesis> there = new ArrayList<>();
    double before = 0;
    double after = 0;
    for (Hypothesis hypothesis : hypotheses) {
      before += hypothesis.weight();
      for (Hypothesis moved : hypothesis.moved(metres, graph, here)) {
        after += moved.weight();
        there.add(moved);
      }
    }
    unknownWeight += Math.max(0, before - after);
    hypotheses = merged(there);
    if (odometer - fixOdometer > BLIND_METRES) {
      lose();
    }
  }

  /**
   * Those tiles of the shelf are others now: somebody has learned or forgotten. What was recognised
   * stays as far as it is still known.
   */
  public void changed(Set<TileKey> keys) {
    graph.reread(keys);
    FlatGround here = ground;
    if (here == null || keys.isEmpty()) {
      return;
    }
    List<Hypothesis> known = new ArrayList<>();
    for (Hypothesis hypothesis : hypotheses) {
      Optional<Hypothesis> still = hypothesis.still(graph, here);
      still.ifPresent(known::add);
      unknownWeight += still.isPresent() ? 0 : hypothesis.weight();
    }
    hypotheses = known;
  }

  private void lose() {
    hypotheses.clear();
    unknownWeight = 1;
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
      lose();
    }
    FlatGround.Spot spot = trail.accept(fix.seconds(), odometer, told);
    fixSeconds = fix.seconds();
    fixOdometer = odometer;
    OptionalDouble heading = trail.heading();
    if (isStanding || heading.isEmpty()) {
      return;
    }
    enter(spot, heading.getAsDouble(), seconds, here);
    weigh(spot, heading.getAsDouble(), SightCosts.liveWeight(seconds), here);
    normalise();
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
    hypotheses.replaceAll(hypothesis -> hypothesis.on(fresh));
    return fresh;
  }

  /** Some of what was on unknown roads comes upon known ones near the fix, and the reverse. */
  private void enter(FlatGround.Spot spot, double heading, double seconds, FlatGround here) {
    List<Hypothesis> found = near(spot, heading, here);
    double left = 0;
    for (int i = 0; i < hypotheses.size(); i++) {
      double leaves = hypotheses.get(i).weight() * LEAVES_PER_SECOND * seconds;
      left += leaves;
      hypotheses.set(i, hypotheses.get(i).weighed(1 - LEAVES_PER_SECOND * seconds));
    }
    double enters = found.isEmpty() ? 0 : unknownWeight * ENTERS_PER_SECOND * seconds;
    unknownWeight += left - enters;
    double often = found.stream().mapToDouble(RoadMatcher::often).sum();
    for (Hypothesis candidate : found) {
      place(candidate.weighed(enters * often(candidate) / often));
    }
  }

  /** A road that was driven often is likelier. */
  private static double often(Hypothesis candidate) {
    return candidate.stretch().from().passes() + 0.5;
  }

  private void place(Hypothesis candidate) {
    for (int i = 0; i < hypotheses.size(); i++) {
      Hypothesis known = hypotheses.get(i);
      if (known.isBeside(candidate)
          && known.spot().distanceTo(candidate.spot()) < SAME_PLACE_METRES) {
        hypotheses.set(
            i, new Hypothesis(known.stretch(), known.share(), known.weight() + candidate.weight()));
        return;
      }
    }
    hypotheses.add(candidate);
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
    List<Hypothesis> weighed = new ArrayList<>();
    for (Hypothesis hypothesis : hypotheses) {
      Stretch stretch = hypothesis.stretch();
      double direction = stretch.heading();
      FlatGround.Spot at = hypothesis.spot();
      double east = spot.east() - at.east();
      double north = spot.north() - at.north();
      double along = east * Math.cos(direction) + north * Math.sin(direction);
      double across = -east * Math.sin(direction) + north * Math.cos(direction);
      double cost =
          SightCosts.across(
                  Math.hypot(across, beyond(along)),
                  Math.hypot(FIX_METRES, stretch.placeErrorMetres(hypothesis.share())))
              + SightCosts.heading(Math.IEEEremainder(heading - direction, 2 * Math.PI));
      weighed.addAll(
          hypothesis.weighed(Math.exp(-weight * cost)).moved(ALONG_GAIN * along, graph, here));
    }
    hypotheses = merged(weighed);
  }

  /** What is too far ahead or behind to be the odometer's error counts like metres aside. */
  private static double beyond(double along) {
    return Math.max(0, Math.abs(along) - 25);
  }

  private static List<Hypothesis> merged(List<Hypothesis> all) {
    all.sort(Comparator.comparingDouble(Hypothesis::weight).reversed());
    List<Hypothesis> merged = new ArrayList<>();
    for (Hypothesis one : all) {
      int same = 0;
      while (same < merged.size() && !merged.get(same).isOnSameStretch(one)) {
        same++;
      }
      if (same < merged.size()) {
        Hypothesis kept = merged.get(same);
        merged.set(
            same, new Hypothesis(kept.stretch(), kept.share(), kept.weight() + one.weight()));
      } else if (merged.size() < MOST_HYPOTHESES) {
        merged.add(one);
      }
    }
    return merged;
  }

  private void normalise() {
    double all = total();
    hypotheses.removeIf(hypothesis -> hypothesis.weight() < LEAST_WEIGHT * all);
    hypotheses.replaceAll(hypothesis -> hypothesis.weighed(1 / all));
    unknownWeight = Math.max(LEAST_WEIGHT * 100, unknownWeight / all);
  }

  private double total() {
    return unknownWeight + hypotheses.stream().mapToDouble(Hypothesis::weight).sum();
  }

  /** The node nearest to where the vehicle most likely is; empty where nothing was recognised. */
  Optional<RoadNode> likeliest() {
    return hypotheses.stream()
        .max(Comparator.comparingDouble(Hypothesis::weight))
        .map(best -> best.share() < 0.5 ? best.stretch().from() : best.stretch().to());
  }

  @Override
  public RoadAhead ahead() {
    return ahead(graph);
  }

  /** The same with the grades of another graph, which has the same nodes. */
  RoadAhead ahead(RoadGraph graded) {
    FlatGround here = ground;
    if (here == null || hypotheses.isEmpty()) {
      return new RoadAhead.Unknown();
    }
    LookAhead look = new LookAhead(graded, here);
    Hypothesis best =
        hypotheses.stream().max(Comparator.comparingDouble(Hypothesis::weight)).orElseThrow();
    double sure =
        hypotheses.stream().filter(best::isBeside).mapToDouble(Hypothesis::weight).sum() / total();
    return sure >= SURE ? look.from(best.stretch(), best.share()) : undecided(look);
  }

  /** Several roads may be under the vehicle: each is a way that may be taken. */
  private RoadAhead undecided(LookAhead look) {
    double all = total();
    List<RoadAhead.Branch> branches = new ArrayList<>();
    double known = 0;
    for (Hypothesis hypothesis : hypotheses) {
      double odds = hypothesis.weight() / all;
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
