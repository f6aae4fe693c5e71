package steadypull.road.memory;

import java.util.Arrays;
import java.util.List;
import steadypull.road.FlatGround;
import steadypull.road.GradeProfile;

/** A way along remembered nodes from a vehicle on, as it is being followed. One thread. */
final class KnownWay {
  static final double PIECE_METRES = 50;

  /** Nobody plans farther ahead, m. */
  static final double FARTHEST_METRES = 15_000;

  private final RoadGraph graph;
  private final FlatGround ground;
  private final double odds;
  private double[] metres;
  private double[] grades;
  private double[] errors;
  private int size;
  private RoadNode last;

  /** Begins at a place on a stretch; the odds that the vehicle goes on from there are 1. */
  KnownWay(RoadGraph graph, FlatGround ground, Stretch stretch, double share) {
    this.graph = graph;
    this.ground = ground;
    odds = 1;
    metres = new double[64];
    grades = new double[64];
    errors = new double[64];
    add(0, stretch.grade(share), stretch.gradeError(share));
    last = stretch.to();
    add((1 - share) * stretch.metres(), last.grade(), last.gradeError());
  }

  private KnownWay(KnownWay before, RoadNode next, double odds) {
    graph = before.graph;
    ground = before.ground;
    this.odds = odds;
    metres = before.metres.clone();
    grades = before.grades.clone();
    errors = before.errors.clone();
    size = before.size;
    last = before.last;
    goOn(next);
  }

  /** How likely this way is taken, above 0 to 1. */
  double odds() {
    return odds;
  }

  double lengthMetres() {
    return metres[size - 1];
  }

  /** Goes on to the next parting of ways, the end of what is known, or far enough. */
  void follow() {
    List<RoadLink> links = links();
    while (links.size() == 1 && isShort()) {
      RoadNode next = graph.node(links.getFirst().to()).orElseThrow();
      goOn(next);
      links = links();
    }
  }

  /** The ways on from where it stands; empty at the end of what is known and far enough. */
  List<RoadLink> partings() {
    return isShort() ? links() : List.of();
  }

  /** The same way and on to a node. */
  KnownWay towards(long node, double share) {
    return new KnownWay(this, graph.node(node).orElseThrow(), odds * share);
  }

  private boolean isShort() {
    return lengthMetres() < FARTHEST_METRES;
  }

  private List<RoadLink> links() {
    return graph.links(last.id());
  }

  private void goOn(RoadNode next) {
    double reached = lengthMetres() + Stretch.of(last, next, ground).metres();
    last = next;
    add(reached, next.grade(), next.gradeError());
  }

  private void add(double reached, double grade, double error) {
    if (size == metres.length) {
      metres = Arrays.copyOf(metres, size * 2);
      grades = Arrays.copyOf(grades, size * 2);
      errors = Arrays.copyOf(errors, size * 2);
    }
    metres[size] = reached;
    grades[size] = grade;
    errors[size] = error;
    size++;
  }

  /**
   * Its profile in whole pieces.
   *
   * @param fromPiece the first piece wanted, counted from the vehicle, 0 or more
   */
  GradeProfile profile(int fromPiece) {
    int pieces = Math.max(0, (int) (lengthMetres() / PIECE_METRES) - fromPiece);
    double[] means = new double[pieces];
    double[] spreads = new double[pieces];
    int segment = 0;
    for (int piece = 0; piece < pieces; piece++) {
      double begin = (fromPiece + piece) * PIECE_METRES;
      while (metres[segment + 1] <= begin) {
        segment++;
      }
      mean(segment, begin, piece, means, spreads);
    }
    return new GradeProfile(PIECE_METRES, means, spreads);
  }

  /** Grade and error run straight from node to node; errors of neighbours go together. */
  private void mean(int first, double begin, int piece, double[] means, double[] spreads) {
    double end = begin + PIECE_METRES;
    double from = begin;
    for (int at = first; from < end && at + 1 < size; at++) {
      double to = Math.min(end, metres[at + 1]);
      double middle = ((from + to) / 2 - metres[at]) / (metres[at + 1] - metres[at]);
      double part = (to - from) / PIECE_METRES;
      means[piece] += part * (grades[at] + middle * (grades[at + 1] - grades[at]));
      spreads[piece] += part * (errors[at] + middle * (errors[at + 1] - errors[at]));
      from = to;
    }
  }
}
