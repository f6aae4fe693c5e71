package steadypull.ui;

import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.scene.control.ListView;
import javafx.scene.layout.Pane;
import steadypull.store.TripSummary;

/** Chooses which trips were driven before a change and which after it. */
final class CompareRunsPick extends Pane {
  private static final double WIDTH = 1132;
  private static final double TOP = 84;

  private final ObservableList<TripSummary> trips = FXCollections.observableArrayList();
  private final ListView<TripSummary> list = new ListView<>(trips);

  CompareRunsPick(Words words, TripLineWords lines, CompareModel model, Runnable done) {
    setManaged(false);
    setPickOnBounds(false);
    list.setId("compare-trips");
    list.getStyleClass().add("trip-list");
    list.setManaged(false);
    list.setCellFactory(_ -> new CompareTripCell(words, lines, model));
    double foot = ParkedGeometry.BOTTOM - ParkedGeometry.ROW_HEIGHT;
    list.resizeRelocate(CompareGeometry.LEFT, TOP, WIDTH, foot - ParkedGeometry.ROW_GAP - TOP);
    PressRow show = new PressRow(words.say("compare.show"), done);
    show.setId("compare-show");
    show.getStyleClass().add("solid");
    show.place(CompareGeometry.LEFT, foot, WIDTH, ParkedGeometry.ROW_HEIGHT);
    getChildren().addAll(list, show);
    model.tripsProperty().addListener((_, _, found) -> trips.setAll(found));
    model.chosenProperty().addListener((_, _, _) -> list.refresh());
    trips.setAll(model.tripsProperty().get());
  }
}
