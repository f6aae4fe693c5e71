package steadypull.report;

import java.util.Locale;

/**
 * A picture: lines as vectors, words as text of the page that lies over them and stays text when it
 * is printed. Lengths in px, from the upper left corner. One use.
 */
final class Drawing {
  private static final double HATCH_STEP = 5;
  private static final int LABEL_HEIGHT = 14;

  /** Which side of a label stays where it is. */
  enum Anchor {
    LEFT,
    CENTRE,
    RIGHT
  }

  private final double width;
  private final double height;
  private final String title;
  private final Markup shapes = new Markup();
  private final Markup labels = new Markup();
  private int clips;

  Drawing(double width, double height, String title) {
    this.width = width;
    this.height = height;
    this.title = title;
  }

  void rectangle(String fill, double x, double y, double wide, double high) {
    shapes.empty(
        "rect", "x", px(x), "y", px(y), "width", px(wide), "height", px(high), "fill", fill);
  }

  void frame(String stroke, double thick, double x, double y, double wide, double high) {
    shapes.empty(
        "rect",
        "x",
        px(x),
        "y",
        px(y),
        "width",
        px(wide),
        "height",
        px(high),
        "fill",
        "none",
        "stroke",
        stroke,
        "stroke-width",
        px(thick));
  }

  void line(String stroke, double thick, double fromX, double fromY, double toX, double toY) {
    shapes.empty(
        "path",
        "d",
        "M" + px(fromX) + "," + px(fromY) + "L" + px(toX) + "," + px(toY),
        "stroke",
        stroke,
        "stroke-width",
        px(thick),
        "fill",
        "none");
  }

  void dotted(String stroke, double thick, double x, double fromY, double toY) {
    shapes.empty(
        "path",
        "d",
        "M" + px(x) + "," + px(fromY) + "V" + px(toY),
        "stroke",
        stroke,
        "stroke-width",
        px(thick),
        "stroke-dasharray",
        "1.5,3",
        "fill",
        "none");
  }

  void circle(String stroke, String fill, double x, double y, double radius) {
    shapes.empty(
        "circle",
        "cx",
        px(x),
        "cy",
        px(y),
        "r",
        px(radius),
        "stroke",
        stroke,
        "stroke-width",
        "2",
        "fill",
        fill);
  }

  /** A line through points; where a height is no number, it is broken. */
  void curve(String stroke, double thick, double[] x, double[] y) {
    StringBuilder path = new StringBuilder();
    boolean isDown = false;
    for (int i = 0; i < x.length; i++) {
      if (Double.isNaN(y[i])) {
        isDown = false;
        continue;
      }
      path.append(isDown ? "L" : "M").append(px(x[i])).append(',').append(px(y[i]));
      isDown = true;
    }
    if (!path.isEmpty()) {
      shapes.empty(
          "path",
          "d",
          path.toString(),
          "stroke",
          stroke,
          "stroke-width",
          px(thick),
          "stroke-linejoin",
          "round",
          "fill",
          "none");
    }
  }

  /** The area between two lines over the same places. */
  void band(String fill, double[] x, double[] upper, double[] lower) {
    String outline = outline(x, upper, lower);
    if (!outline.isEmpty()) {
      shapes.empty("path", "d", outline, "fill", fill);
    }
  }

  /** The same, hatched. */
  void hatchedBand(String stroke, double[] x, double[] upper, double[] lower) {
    String outline = outline(x, upper, lower);
    if (!outline.isEmpty()) {
      hatch(stroke, outline, 0, 0, width, height);
    }
  }

  void hatchedRectangle(String stroke, double x, double y, double wide, double high) {
    String outline =
        "M" + px(x) + "," + px(y) + "h" + px(wide) + "v" + px(high) + "h" + px(-wide) + "Z";
    hatch(stroke, outline, x, y, wide, high);
  }

  /** Lines of their own, cut at an outline: patterns print with seams. */
  private void hatch(String stroke, String outline, double x, double y, double wide, double high) {
    String id = "cut" + Integer.toHexString(title.hashCode()) + "-" + clips++;
    shapes.open("clipPath", "id", id).empty("path", "d", outline).close();
    StringBuilder lines = new StringBuilder();
    for (double from = x - high; from < x + wide; from += HATCH_STEP) {
      lines
          .append('M')
          .append(px(from))
          .append(',')
          .append(px(y + high))
          .append('L')
          .append(px(from + high))
          .append(',')
          .append(px(y));
    }
    shapes
        .open("g", "clip-path", "url(#" + id + ")")
        .empty("path", "d", lines.toString(), "stroke", stroke, "stroke-width", "0.8")
        .close();
  }

  private static String outline(double[] x, double[] upper, double[] lower) {
    StringBuilder there = new StringBuilder();
    StringBuilder back = new StringBuilder();
    for (int i = 0; i < x.length; i++) {
      if (!Double.isNaN(upper[i]) && !Double.isNaN(lower[i])) {
        there.append(there.isEmpty() ? "M" : "L").append(px(x[i])).append(',').append(px(upper[i]));
        back.insert(0, "L" + px(x[i]) + "," + px(lower[i]));
      }
    }
    return there.isEmpty() ? "" : there.append(back).append('Z').toString();
  }

  /** A word whose middle height is at y. */
  void label(String text, String styleClass, Anchor anchor, double x, double y, double room) {
    double left =
        switch (anchor) {
          case LEFT -> x;
          case CENTRE -> x - room / 2;
          case RIGHT -> x - room;
        };
    labels
        .open(
            "div",
            "class",
            "label " + styleClass + " " + anchor.name().toLowerCase(Locale.ROOT),
            "style",
            "left:%spx;top:%spx;width:%spx"
                .formatted(px(left), px(y - LABEL_HEIGHT / 2.0), px(room)))
        .with("span", text)
        .close();
  }

  /** The picture as part of a page. */
  Markup markup() {
    return new Markup()
        .open(
            "div",
            "class",
            "picture",
            "style",
            "width:" + px(width) + "px;height:" + px(height) + "px")
        .open(
            "svg",
            "xmlns",
            "http://www.w3.org/2000/svg",
            "role",
            "img",
            "aria-label",
            title,
            "style",
            "display:block;width:" + px(width) + "px;height:" + px(height) + "px",
            "width",
            px(width),
            "height",
            px(height),
            "viewBox",
            "0 0 " + px(width) + " " + px(height))
        .with("title", title)
        .add(shapes)
        .close()
        .add(labels)
        .close();
  }

  private static String px(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }
}
