package steadypull.ui;

import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;

/** Draws in tokens on a canvas. FX thread only. */
final class Pen {
  private final GraphicsContext context;
  private final Palette palette;

  Pen(GraphicsContext context, Palette palette) {
    this.context = context;
    this.palette = palette;
  }

  void fill(Token token, double x, double y, double width, double height) {
    context.setFill(palette.colour(token));
    context.fillRect(x, y, width, height);
  }

  void fill(Token token, double opacity, double x, double y, double width, double height) {
    context.setFill(faded(token, opacity));
    context.fillRect(x, y, width, height);
  }

  void line(Token token, double width, double fromX, double fromY, double toX, double toY) {
    stroke(token, width);
    context.strokeLine(fromX, fromY, toX, toY);
  }

  /** Sets a thin line that lets the ground through. */
  void faintStroke(Token token, double opacity, double width) {
    stroke(token, width);
    context.setStroke(faded(token, opacity));
  }

  /** Sets a line, dashed if lengths are given. */
  void stroke(Token token, double width, double... dashes) {
    context.setStroke(palette.colour(token));
    context.setLineWidth(width);
    context.setLineDashes(dashes);
    context.setLineCap(StrokeLineCap.BUTT);
    context.setLineJoin(StrokeLineJoin.ROUND);
  }

  void roundCaps() {
    context.setLineCap(StrokeLineCap.ROUND);
  }

  void dot(Token token, Token rim, double x, double y, double radius) {
    context.setFill(palette.colour(rim));
    context.fillOval(x - radius - 1, y - radius - 1, 2 * radius + 2, 2 * radius + 2);
    context.setFill(palette.colour(token));
    context.fillOval(x - radius + 1, y - radius + 1, 2 * radius - 2, 2 * radius - 2);
  }

  void polyline(double[] x, double[] y, int count) {
    context.strokePolyline(x, y, count);
  }

  void polygon(Token token, double opacity, double[] x, double[] y, int count) {
    context.setFill(faded(token, opacity));
    context.fillPolygon(x, y, count);
  }

  /** Draws inside a rectangle only. */
  void within(double x, double y, double width, double height, Runnable drawing) {
    context.save();
    context.beginPath();
    context.rect(x, y, width, height);
    context.clip();
    drawing.run();
    context.restore();
  }

  /** The colour of a token in the light of the canvas. */
  Color colour(Token token) {
    return palette.colour(token);
  }

  /** The canvas itself, for what has no word here. */
  GraphicsContext context() {
    return context;
  }

  private Color faded(Token token, double opacity) {
    Color colour = palette.colour(token);
    return colour.deriveColor(0, 1, 1, opacity);
  }
}
