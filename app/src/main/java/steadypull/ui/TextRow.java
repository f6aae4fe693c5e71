package steadypull.ui;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.layout.Pane;
import javafx.scene.text.Text;
import javafx.scene.transform.Scale;

/**
 * Texts and small marks side by side on one baseline, anchored at one x. A row that would be wider
 * than its room is made smaller as a whole, never cut.
 */
final class TextRow extends Pane {
  private final Anchor anchor;
  private final List<Item> items = new ArrayList<>();
  private final Scale fit = new Scale();
  private double room = Double.MAX_VALUE;

  /** Which side of the row stays where it is. */
  enum Anchor {
    LEFT(0),
    CENTRE(0.5),
    RIGHT(1);

    private final double share;

    Anchor(double share) {
      this.share = share;
    }
  }

  private record Item(Node node, double gapBefore) {
    double width() {
      return node.getLayoutBounds().getWidth();
    }

    boolean isShown() {
      return node.isVisible() && width() > 0;
    }
  }

  TextRow(Anchor anchor) {
    this.anchor = anchor;
    setManaged(false);
    setPickOnBounds(false);
    getTransforms().add(fit);
  }

  /** A text with its style classes. */
  static Text text(String... styleClasses) {
    Text text = new Text();
    text.getStyleClass().add("words");
    text.getStyleClass().addAll(styleClasses);
    return text;
  }

  /** Appends a text or a mark; a mark stands on the baseline. */
  TextRow add(Node node, double gapBefore) {
    items.add(new Item(node, gapBefore));
    getChildren().add(node);
    return this;
  }

  /** Puts the row on a baseline. */
  TextRow at(double x, double baseline) {
    setLayoutX(x);
    setLayoutY(baseline);
    return this;
  }

  /** Limits its width. */
  TextRow within(double width) {
    if (room != width) {
      room = width;
      requestLayout();
    }
    return this;
  }

  /** Width that it takes at present, made smaller or not. */
  double shownWidth() {
    return Math.min(room, naturalWidth());
  }

  /** Width that its parts ask for. */
  double naturalWidth() {
    double width = 0;
    for (Item item : items) {
      if (item.isShown()) {
        width += (width == 0 ? 0 : item.gapBefore()) + item.width();
      }
    }
    return width;
  }

  @Override
  protected void layoutChildren() {
    double width = naturalWidth();
    double share = width > room ? room / width : 1;
    fit.setX(share);
    fit.setY(share);
    double x = -anchor.share * width;
    boolean first = true;
    for (Item item : items) {
      if (item.isShown()) {
        x += first ? 0 : item.gapBefore();
        place(item.node(), x);
        x += item.width();
        first = false;
      }
    }
  }

  private static void place(Node node, double x) {
    node.setLayoutX(x - node.getLayoutBounds().getMinX());
    node.setLayoutY(node instanceof Text ? 0 : -node.getLayoutBounds().getMaxY());
  }
}
