package steadypull.road.memory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import steadypull.road.FlatGround;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;

/** Follows remembered roads from a place on. One thread. */
final class LookAhead {
  /** Ways less likely than that are left to "where nobody has been". */
  private static final double LEAST_ODDS = 0.02;

  private static final int MOST_BRANCHES = 6;
  private static final int MOST_PARTINGS = 24;

  private final RoadGraph graph;
  private final FlatGround ground;

  LookAhead(RoadGraph graph, FlatGround ground) {
    this.graph = graph;
    this.ground = ground;
  }

  /** What lies ahead of a vehicle that is known to be there. */
  RoadAhead.Known from(Stretch stretch, double share) {
    KnownWay certain = begin(stretch, share);
    certain.follow();
    int pieces = (int) (certain.lengthMetres() / KnownWay.PIECE_METRES);
    List<RoadAhead.Branch> branches =
        certain.partings().isEmpty()
            ? List.of()
            : branches(certain).stream()
                .map(way -> new RoadAhead.Branch(way.odds(), way.profile(pieces)))
                .filter(branch -> branch.profile().size() > 0)
                .toList();
    return new RoadAhead.Known(certain.profile(0), branches);
  }

  /** With what the nodes tell now: the stretch may be of before, or of a sister graph. */
  private KnownWay begin(Stretch stretch, double share) {
    RoadNode from = graph.node(stretch.from().id()).orElse(stretch.from());
    RoadNode to = graph.node(stretch.to().id()).orElse(stretch.to());
    return new KnownWay(graph, ground, Stretch.of(from, to, ground), share);
  }

  /** The profile as far as it leads without a choice. */
  GradeProfile certainFrom(Stretch stretch, double share) {
    KnownWay certain = begin(stretch, share);
    certain.follow();
    return certain.profile(0);
  }

  /** All likely ways through all partings, likeliest first. */
  private List<KnownWay> branches(KnownWay certain) {
    PriorityQueue<KnownWay> open =
        new PriorityQueue<>(Comparator.comparingDouble(KnownWay::odds).reversed());
    List<KnownWay> ended = new ArrayList<>();
    part(certain, open);
    for (int parting = 0; !open.isEmpty() && ended.size() < MOST_BRANCHES; parting++) {
      KnownWay way = open.remove();
      way.follow();
      if (way.partings().isEmpty() || parting >= MOST_PARTINGS) {
        ended.add(way);
      } else {
        part(way, open);
      }
    }
    ended.sort(Comparator.comparingDouble(KnownWay::odds).reversed());
    return ended;
  }

  private static void part(KnownWay way, PriorityQueue<KnownWay> open) {
    var links = way.partings();
    double[] odds = Odds.of(links);
    for (int i = 0; i < odds.length; i++) {
      if (way.odds() * odds[i] >= LEAST_ODDS) {
        open.add(way.towards(links.get(i).to(), odds[i]));
      }
    }
  }
}
