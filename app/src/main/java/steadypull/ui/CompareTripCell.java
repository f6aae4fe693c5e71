package steadypull.ui;

import javafx.scene.control.ListCell;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.Pane;
import javafx.scene.text.Text;
import org.jspecify.annotations.Nullable;
import steadypull.compare.Side;
import steadypull.store.TripSummary;

/** One trip that can be put on either side. */
final class CompareTripCell extends ListCell<TripSummary> {
  private static final double BUTTON_WIDTH = 150;
  private static final double BUTTON_GAP = 8;
  private static final double RIGHT = 1104;
  private static final double TEXT_ROOM = 760;
  private static final double HEIGHT = 78;
  private static final int MOST_OF_A_NAME = 40;
  private static final int MOST_SAID = 70;

  private final TripLineWords lines;
  private final CompareModel model;
  private final Text title = TextRow.text("bold");
  private final Text said = TextRow.text("small", "second");
  private final ToggleButton before;
  private final ToggleButton after;
  private final Pane face;

  CompareTripCell(Words words, TripLineWords lines, CompareModel model) {
    this.lines = lines;
    this.model = model;
    getStyleClass().add("trip-cell");
    before = button(words.say("compare.before"), Side.BEFORE, 2);
    after = button(words.say("compare.after"), Side.AFTER, 1);
    face =
        new Pane(
            new TextRow(TextRow.Anchor.LEFT)
                .add(title, 0)
                .at(TripsGeometry.ROW_PAD, TripsGeometry.ROW_FIRST_BASELINE)
                .within(TEXT_ROOM),
            new TextRow(TextRow.Anchor.LEFT)
                .add(said, 0)
                .at(TripsGeometry.ROW_PAD, TripsGeometry.ROW_SECOND_BASELINE)
                .within(TEXT_ROOM),
            before,
            after);
    face.setPrefHeight(HEIGHT);
  }

  private ToggleButton button(String text, Side side, int fromRight) {
    ToggleButton button = new ToggleButton(text);
    button.getStyleClass().setAll("toggle-button", "press", "side-choice");
    button.setManaged(false);
    button.resizeRelocate(
        RIGHT - fromRight * BUTTON_WIDTH - (fromRight - 1) * BUTTON_GAP, 0, BUTTON_WIDTH, HEIGHT);
    button.setOnAction(
        _ -> {
          if (getItem() != null) {
            model.toggle(getItem(), side);
          }
        });
    return button;
  }

  @Override
  protected void updateItem(@Nullable TripSummary trip, boolean empty) {
    super.updateItem(trip, empty);
    if (empty || trip == null) {
      setGraphic(null);
      setAccessibleText("");
      return;
    }
    title.setText(
        lines.moment(trip) + "  " + TripLineWords.shortened(trip.vehicleName(), MOST_OF_A_NAME));
    said.setText(TripLineWords.shortened(lines.said(trip), MOST_SAID));
    var side = model.sideOf(trip);
    before.setSelected(side.filter(Side.BEFORE::equals).isPresent());
    after.setSelected(side.filter(Side.AFTER::equals).isPresent());
    setAccessibleText(lines.moment(trip) + ", " + lines.summary(trip));
    setGraphic(face);
  }
}
