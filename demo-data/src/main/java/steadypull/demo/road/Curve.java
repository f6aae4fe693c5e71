package steadypull.demo.road;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A smooth line through given spots: a spline whose tangent at each spot is parallel to the line
 * between its neighbours (Catmull and Rom, "A class of local interpolating splines", 1974),
 * measured along its length. Immutable.
 */
final class Curve {
  private static final int PIECES = 64;

  private final double[] along;
  private final double[] easts;
  private final double[] norths;

  /** Runs through two spots or more. */
  Curve(List<Street.Spot> through) {
    if (through.size() < 2) {
      throw new IllegalArgumentException("A line has two spots or more, found " + through.size());
    }
    List<Street.Spot> drawn = new ArrayList<>(List.of(through.getFirst()));
    for (int span = 0; span + 1 < through.size(); span++) {
      for (int piece = 1; piece <= PIECES; piece++) {
        drawn.add(between(through, span, (double) piece / PIECES));
      }
    }
    easts = drawn.stream().mapToDouble(Street.Spot::east).toArray();
    norths = drawn.stream().mapToDouble(Street.Spot::north).toArray();
    along = new double[drawn.size()];
    for (int i = 1; i < along.length; i++) {
      along[i] = along[i - 1] + drawn.get(i - 1).distanceTo(drawn.get(i));
    }
  }

  double length() {
    return along[along.length - 1];
  }

  Street.Spot spot(double metres) {
    int piece = piece(metres);
    double share = (metres - along[piece]) / (along[piece + 1] - along[piece]);
    return new Street.Spot(
        easts[piece] + share * (easts[piece + 1] - easts[piece]),
        norths[piece] + share * (norths[piece + 1] - norths[piece]));
  }

  /** Radians counter-clockwise from east. */
  double heading(double metres) {
    int piece = piece(metres);
    return Math.atan2(norths[piece + 1] - norths[piece], easts[piece + 1] - easts[piece]);
  }

  private int piece(double metres) {
    int found = Arrays.binarySearch(along, metres);
    int before = found >= 0 ? found : -found - 2;
    return Math.clamp(before, 0, along.length - 2);
  }

  private static Street.Spot between(List<Street.Spot> through, int span, double share) {
    Street.Spot from = through.get(span);
    Street.Spot to = through.get(span + 1);
    Street.Spot before = through.get(Math.max(0, span - 1));
    Street.Spot after = through.get(Math.min(through.size() - 1, span + 2));
    return new Street.Spot(
        spline(before.east(), from.east(), to.east(), after.east(), share),
        spline(before.north(), from.north(), to.north(), after.north(), share));
  }

  private static double spline(double before, double from, double to, double after, double share) {
    double linear = to - before;
    double square = 2 * before - 5 * from + 4 * to - after;
    double cube = 3 * from - before - 3 * to + after;
    return from + share * (linear + share * (square + share * cube)) / 2;
  }
}
