package steadypull.ui;

import javafx.scene.control.ListCell;
import javafx.scene.layout.Pane;
import javafx.scene.text.Text;
import org.jspecify.annotations.Nullable;
import steadypull.store.TripSummary;

/** One trip in the list: when and which vehicle, what was said of it, how long and how far. */
final class TripCell extends ListCell<TripSummary> {
  private static final double GAP = 10;
  private static final double SCROLL_BAR = 14;
  private static final int MOST_OF_A_NAME = 21;
  private static final int MOST_SAID = 40;

  private final TripLineWords words;
  private final Text moment = TextRow.text("bold");
  private final Text vehicle = TextRow.text("small");
  private final Text length = TextRow.text();
  private final Text state = TextRow.text("small", "caution", "bold");
  private final Text said = TextRow.text("small", "second");
  private final Text way = TextRow.text("small", "second");
  private final TextRow first = new TextRow(TextRow.Anchor.LEFT).add(moment, 0);
  private final TextRow name = new TextRow(TextRow.Anchor.LEFT).add(vehicle, 0);
  private final TextRow firstRight = new TextRow(TextRow.Anchor.RIGHT).add(length, 0);
  private final TextRow second = new TextRow(TextRow.Anchor.LEFT).add(state, 0).add(said, GAP);
  private final TextRow secondRight = new TextRow(TextRow.Anchor.RIGHT).add(way, 0);
  private final Pane face = new Pane(first, name, firstRight, second, secondRight);

  TripCell(TripLineWords words) {
    this.words = words;
    getStyleClass().add("trip-cell");
    face.setPrefHeight(TripsGeometry.ROW_HEIGHT);
    double left = TripsGeometry.ROW_PAD;
    double right = TripsGeometry.LIST_WIDTH - SCROLL_BAR - TripsGeometry.ROW_PAD;
    first.at(left, TripsGeometry.ROW_FIRST_BASELINE);
    firstRight.at(right, TripsGeometry.ROW_FIRST_BASELINE);
    second.at(left, TripsGeometry.ROW_SECOND_BASELINE);
    secondRight.at(right, TripsGeometry.ROW_SECOND_BASELINE);
  }

  /** Widths are known when the style sheets have spoken. */
  @Override
  protected void layoutChildren() {
    double room = TripsGeometry.LIST_WIDTH - SCROLL_BAR - 2 * TripsGeometry.ROW_PAD - GAP;
    name.at(TripsGeometry.ROW_PAD + first.naturalWidth() + GAP, TripsGeometry.ROW_FIRST_BASELINE)
        .within(room - first.naturalWidth() - GAP - firstRight.naturalWidth());
    second.within(room - secondRight.naturalWidth());
    super.layoutChildren();
  }

  @Override
  protected void updateItem(@Nullable TripSummary trip, boolean empty) {
    super.updateItem(trip, empty);
    if (empty || trip == null) {
      setGraphic(null);
      setAccessibleText("");
      return;
    }
    moment.setText(words.moment(trip));
    vehicle.setText(TripLineWords.shortened(trip.vehicleName(), MOST_OF_A_NAME));
    length.setText(words.length(trip));
    state.setText(words.state(trip));
    said.setText(TripLineWords.shortened(words.said(trip), MOST_SAID));
    way.setText(words.way(trip));
    setAccessibleText(words.moment(trip) + ", " + words.summary(trip) + " " + words.said(trip));
    setGraphic(face);
  }
}
