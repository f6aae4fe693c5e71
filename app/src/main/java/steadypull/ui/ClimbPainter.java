package steadypull.ui;

import steadypull.drive.ClimbAhead;
import steadypull.road.GradeProfile;

/** Draws a whole climb beside the road strip, with a dot where the vehicle is on it. */
final class ClimbPainter {
  private static final double BEHIND_OPACITY = 0.55;
  private static final double LINE_WIDTH = 2;
  private static final double DOT_RADIUS = 6;

  private final Pen pen;

  ClimbPainter(Pen pen) {
    this.pen = pen;
  }

  void paint(ClimbAhead climb) {
    Outline outline = Outline.of(climb.profile());
    double here = Math.clamp(-climb.toStartMetres() / climb.profile().lengthMetres(), 0, 1);
    ground(outline, 0, here, BEHIND_OPACITY);
    ground(outline, here, 1, 1);
    pen.stroke(Token.TERRAIN_LINE, LINE_WIDTH);
    pen.roundCaps();
    pen.polyline(outline.x, outline.y, outline.x.length);
    if (climb.isBegun()) {
      pen.dot(Token.INK, Token.SURFACE, x(here), outline.yAt(here), DOT_RADIUS);
    }
  }

  private void ground(Outline outline, double from, double to, double opacity) {
    int steps = outline.x.length;
    double[] x = new double[steps + 2];
    double[] y = new double[steps + 2];
    for (int step = 0; step < steps; step++) {
      double share = from + (to - from) * step / (steps - 1);
      x[step] = x(share);
      y[step] = outline.yAt(share);
    }
    x[steps] = x(to);
    y[steps] = DriveGeometry.ROAD_CHART_BOTTOM;
    x[steps + 1] = x(from);
    y[steps + 1] = DriveGeometry.ROAD_CHART_BOTTOM;
    pen.polygon(Token.TERRAIN, opacity, x, y, steps + 2);
  }

  private static double x(double share) {
    return DriveGeometry.STATE_LEFT
        + share * (DriveGeometry.STATE_RIGHT - DriveGeometry.STATE_LEFT);
  }

  /** The climb's line from its start to its top. */
  private static final class Outline {
    private final double[] x;
    private final double[] y;

    private Outline(double[] x, double[] y) {
      this.x = x;
      this.y = y;
    }

    static Outline of(GradeProfile profile) {
      int points = profile.size() + 1;
      double[] heights = new double[points];
      double lowest = 0;
      double highest = 0;
      for (int piece = 0; piece < profile.size(); piece++) {
        heights[piece + 1] = heights[piece] + profile.grade(piece) * profile.pieceMetres();
        lowest = Math.min(lowest, heights[piece + 1]);
        highest = Math.max(highest, heights[piece + 1]);
      }
      double[] x = new double[points];
      double[] y = new double[points];
      double room = DriveGeometry.ROAD_CLIMB_BOTTOM - DriveGeometry.ROAD_CLIMB_TOP;
      for (int point = 0; point < points; point++) {
        x[point] = ClimbPainter.x(point / (points - 1.0));
        y[point] =
            DriveGeometry.ROAD_CLIMB_BOTTOM
                - room * (heights[point] - lowest) / Math.max(1, highest - lowest);
      }
      return new Outline(x, y);
    }

    double yAt(double share) {
      double place = share * (y.length - 1);
      int before = Math.min(y.length - 2, (int) place);
      return y[before] + (place - before) * (y[before + 1] - y[before]);
    }
  }
}
