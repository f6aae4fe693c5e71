package steadypull.road.memory;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.road.FlatGround;

/**
 * Which remembered road a pass followed, point by point: the likeliest sequence (Viterbi, "Error
 * bounds for convolutional codes", IEEE Transactions on Information Theory 13, 1967, 260-269) of
 * places on the graph or beside it, after Newson and Krumm, "Hidden Markov map matching through
 * noise and sparseness", ACM GIS 2009. Costs are negative logarithms of likelihoods against "a road
 * that nobody knows", which costs 0.
 */
final class Alignment {
  /** Farther from a road than that it is another one, m. */
  private static final double FARTHEST_METRES = 45;

  /** Nodes of a road lie no farther apart than that, m. */
  private static final double LONGEST_STRETCH_METRES = 80;

  /**
   * To turn off a known road or to come upon one, and to jump from one to another, as costs. A
   * receiver that wanders away for a minute must not look like either.
   */
  private static final double TURN = 4;

  private static final double JUMP = 12;

  private final RoadGraph graph;

  /** A place on a stretch; the cost of being there. */
  record Place(Stretch stretch, double share, double cost) {}

  private record Step(double cost, int before) {}

  Alignment(RoadGraph graph) {
    this.graph = graph;
  }

  /** For each point of a pass its place on a remembered road; empty where it is a new one. */
  List<Optional<Place>> of(PassCurve curve) {
    List<PassCurve.Spot> spots = curve.spots();
    List<List<Place>> places = new ArrayList<>();
    List<Step[]> steps = new ArrayList<>();
    for (int i = 0; i < spots.size(); i++) {
      FlatGround ground = ground(spots.get(i));
      places.add(places(spots.get(i), ground));
      double weight = SightCosts.weight(i == 0 ? 1 : seconds(spots, i));
      steps.add(
          i == 0
              ? first(places.get(0), weight)
              : steps(
                  places.get(i - 1),
                  steps.get(i - 1),
                  places.get(i),
                  spots.get(i).metres() - spots.get(i - 1).metres(),
                  weight,
                  ground));
    }
    return back(places, steps);
  }

  private static double seconds(List<PassCurve.Spot> spots, int i) {
    return spots.get(i).seconds() - spots.get(i - 1).seconds();
  }

  static FlatGround ground(PassCurve.Spot spot) {
    return FlatGround.around(spot.latitudeDegrees(), spot.longitudeDegrees());
  }

  private List<Place> places(PassCurve.Spot spot, FlatGround ground) {
    FlatGround.Spot here = ground.spot(spot.latitudeDegrees(), spot.longitudeDegrees());
    double farthest = FARTHEST_METRES + spot.errorMetres();
    List<Place> places = new ArrayList<>();
    for (Stretch stretch :
        graph.beginningNear(
            spot.latitudeDegrees(),
            spot.longitudeDegrees(),
            farthest + LONGEST_STRETCH_METRES,
            ground)) {
      double share = stretch.shareNear(here);
      double metres = stretch.at(share).distanceTo(here);
      double turned = Math.IEEEremainder(spot.heading() - stretch.heading(), 2 * Math.PI);
      if (metres <= farthest && SightCosts.isSameWay(turned)) {
        places.add(new Place(stretch, share, cost(spot, stretch, share, metres, turned)));
      }
    }
    return places;
  }

  private static double cost(
      PassCurve.Spot spot, Stretch stretch, double share, double metres, double turned) {
    return SightCosts.across(
            metres, Math.hypot(spot.errorMetres(), stretch.placeErrorMetres(share)))
        + SightCosts.heading(turned)
        + SightCosts.grade(
            spot.grade() - stretch.grade(share),
            Math.hypot(spot.gradeError(), stretch.gradeError(share)));
  }

  /** Step 0 is the new road, the others are the places in their order. */
  private static Step[] first(List<Place> places, double weight) {
    Step[] steps = new Step[places.size() + 1];
    steps[0] = new Step(0, -1);
    for (int i = 0; i < places.size(); i++) {
      steps[i + 1] = new Step(weight * places.get(i).cost, -1);
    }
    return steps;
  }

  private Step[] steps(
      List<Place> from,
      Step[] before,
      List<Place> to,
      double metres,
      double weight,
      FlatGround ground) {
    Step[] steps = new Step[to.size() + 1];
    double[] onwards = new double[from.size()];
    for (int i = 0; i < from.size(); i++) {
      onwards[i] = before[i + 1].cost + TURN;
    }
    steps[0] = best(before[0].cost, onwards);
    double[][] follow = follow(from, to, metres, ground);
    for (int j = 0; j < to.size(); j++) {
      for (int i = 0; i < from.size(); i++) {
        onwards[i] = before[i + 1].cost + follow[i][j];
      }
      Step best = best(before[0].cost + TURN, onwards);
      steps[j + 1] = new Step(best.cost + weight * to.get(j).cost, best.before);
    }
    return steps;
  }

  private static Step best(double fromNew, double[] fromPlaces) {
    Step best = new Step(fromNew, 0);
    for (int i = 0; i < fromPlaces.length; i++) {
      if (fromPlaces[i] < best.cost) {
        best = new Step(fromPlaces[i], i + 1);
      }
    }
    return best;
  }

  private double[][] follow(List<Place> from, List<Place> to, double metres, FlatGround ground) {
    double[][] costs = new double[from.size()][to.size()];
    for (int i = 0; i < from.size(); i++) {
      Arrays.fill(costs[i], JUMP);
      if (!to.isEmpty()) {
        Ways ways = new Ways(graph, from.get(i), metres, ground);
        for (int j = 0; j < to.size(); j++) {
          OptionalDouble driven = ways.metresTo(to.get(j));
          if (driven.isPresent()) {
            costs[i][j] = Math.min(JUMP, SightCosts.along(driven.getAsDouble() - metres, metres));
          }
        }
      }
    }
    return costs;
  }

  private static List<Optional<Place>> back(List<List<Place>> places, List<Step[]> steps) {
    List<Optional<Place>> way = new ArrayList<>();
    Step[] last = steps.getLast();
    int state = 0;
    for (int i = 1; i < last.length; i++) {
      state = last[i].cost < last[state].cost ? i : state;
    }
    for (int i = steps.size() - 1; i >= 0; i--) {
      way.add(state == 0 ? Optional.empty() : Optional.of(places.get(i).get(state - 1)));
      state = steps.get(i)[state].before;
    }
    Collections.reverse(way);
    return way;
  }
}
