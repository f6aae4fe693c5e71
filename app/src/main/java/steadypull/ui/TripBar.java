package steadypull.ui;

import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.layout.Pane;
import steadypull.store.TripSummary;

/** The bar under the list that says what was thrown away last, and brings it back. */
final class TripBar extends Pane {
  private static final double BUTTON_WIDTH = 178;
  private static final double FIRST_BASELINE = 36;
  private static final double SECOND_BASELINE = 64;

  private final Words words;
  private final TripLineWords lines;
  private final Consumer<TripSummary> bringBack;

  TripBar(Words words, TripLineWords lines, Consumer<TripSummary> bringBack) {
    this.words = words;
    this.lines = lines;
    this.bringBack = bringBack;
    setManaged(false);
    getStyleClass().add("trip-bar");
    resizeRelocate(ParkedGeometry.LEFT, top(), TripsGeometry.LIST_WIDTH, ParkedGeometry.ROW_HEIGHT);
    setVisible(false);
  }

  /** The upper edge. */
  static double top() {
    return ParkedGeometry.BOTTOM - ParkedGeometry.ROW_HEIGHT;
  }

  /** Says what was thrown away last; hidden if nothing was. */
  void show(Optional<TripSummary> thrown) {
    setVisible(thrown.isPresent());
    getChildren().clear();
    thrown.ifPresent(this::tell);
  }

  private void tell(TripSummary trip) {
    double room = TripsGeometry.LIST_WIDTH - BUTTON_WIDTH - 2 * TripsGeometry.ROW_PAD;
    PressButton back =
        new PressButton(Icon.NONE, words.say("trips.bringBack"), () -> bringBack.accept(trip));
    back.setId("trips-bring-back");
    back.place(TripsGeometry.LIST_WIDTH - BUTTON_WIDTH, 0, BUTTON_WIDTH, ParkedGeometry.ROW_HEIGHT);
    getChildren()
        .addAll(
            Parked.line(
                    words.say("trips.tripOf", lines.moment(trip)),
                    TripsGeometry.ROW_PAD,
                    FIRST_BASELINE,
                    "bold")
                .within(room),
            Parked.line(
                    words.say("trips.isThrownAway"),
                    TripsGeometry.ROW_PAD,
                    SECOND_BASELINE,
                    "small",
                    "second")
                .within(room),
            back);
  }
}
