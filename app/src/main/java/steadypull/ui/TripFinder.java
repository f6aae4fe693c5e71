package steadypull.ui;

import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.layout.Pane;
import javafx.scene.text.Text;
import steadypull.store.TripSummary;

/** The left of the trips screen: search, filters, and the list of what was found. */
final class TripFinder extends Pane {
  private static final double PLACEHOLDER_MARGIN = 60;

  private final Words words;
  private final TripsDesk desk;
  private final TextField search = new TextField();
  private final PressRow vehicle;
  private final PressRow tag;
  private final ListView<TripSummary> list = new ListView<>();
  private final Text placeholder = TextRow.text("prose");

  /**
   * Builds the column.
   *
   * @param pick opens the choice of a vehicle or a tag
   */
  TripFinder(Words words, TripLineWords lines, TripsDesk desk, Consumer<TripPick.Kind> pick) {
    this.words = words;
    this.desk = desk;
    setManaged(false);
    setPickOnBounds(false);
    vehicle = filter("trips-vehicle", 0, () -> pick.accept(TripPick.Kind.VEHICLES));
    tag = filter("trips-tag", 1, () -> pick.accept(TripPick.Kind.TAGS));
    buildSearch();
    buildList(lines);
    getChildren().addAll(search, vehicle, tag, list);
    TripsModel model = desk.model();
    model.queryProperty().addListener((_, _, query) -> show(query));
    model.listedProperty().addListener((_, _, listed) -> show(listed));
    model.chosenProperty().addListener((_, _, chosen) -> select(chosen));
    search.setText(model.queryProperty().get().text());
    search
        .textProperty()
        .addListener((_, _, typed) -> desk.look(model.queryProperty().get().withText(typed)));
    show(model.queryProperty().get());
    show(model.listedProperty().get());
  }

  private PressRow filter(String id, int place, Runnable action) {
    PressRow row = new PressRow("", action);
    row.setId(id);
    row.getStyleClass().add("tight");
    row.place(
        ParkedGeometry.LEFT + place * (TripsGeometry.FILTER_WIDTH + TripsGeometry.FILTER_GAP),
        TripsGeometry.FILTERS_TOP,
        TripsGeometry.FILTER_WIDTH,
        ParkedGeometry.ROW_HEIGHT);
    return row;
  }

  private void buildSearch() {
    search.getStyleClass().add("entry");
    search.setId("trips-search");
    search.setPromptText(words.say("trips.search"));
    search.setAccessibleText(words.say("trips.search"));
    search.setManaged(false);
    search.resizeRelocate(
        ParkedGeometry.LEFT,
        TripsGeometry.SEARCH_TOP,
        TripsGeometry.LIST_WIDTH,
        ParkedGeometry.ROW_HEIGHT);
  }

  private void buildList(TripLineWords lines) {
    list.getStyleClass().add("trip-list");
    list.setId("trips-list");
    list.setFixedCellSize(TripsGeometry.ROW_HEIGHT);
    list.setCellFactory(_ -> new TripCell(lines));
    placeholder.setWrappingWidth(TripsGeometry.LIST_WIDTH - PLACEHOLDER_MARGIN);
    list.setPlaceholder(placeholder);
    list.setManaged(false);
    list.setAccessibleText(words.say("trips.title"));
    list.getSelectionModel()
        .selectedItemProperty()
        .addListener((_, _, trip) -> Optional.ofNullable(trip).ifPresent(desk::choose));
    endAt(ParkedGeometry.BOTTOM);
  }

  /** Leaves room under the list. */
  void endAt(double bottom) {
    list.resizeRelocate(
        ParkedGeometry.LEFT,
        TripsGeometry.LIST_TOP,
        TripsGeometry.LIST_WIDTH,
        bottom - TripsGeometry.LIST_TOP);
  }

  /** Gives the keyboard to the search field. */
  void focusSearch() {
    search.requestFocus();
    search.selectAll();
  }

  /** Gives the keyboard to the list. */
  void focusList() {
    list.requestFocus();
  }

  private void show(TripQuery query) {
    vehicle.show(
        words.say("trips.vehicle"),
        query.vehicle().orElseGet(() -> words.say("trips.allVehicles")));
    tag.show(words.say("trips.tag"), query.tag().orElseGet(() -> words.say("trips.allTags")));
  }

  private void show(TripsModel.Listed listed) {
    switch (listed) {
      case TripsModel.Listed.Looking _ -> placeholder.setText(words.say("trips.looking"));
      case TripsModel.Listed.Refused(String message) -> {
        list.getItems().clear();
        placeholder.setText(message);
      }
      case TripsModel.Listed.Found(TripHits hits) -> {
        placeholder.setText(hits.all() == 0 ? words.say("trips.none") : words.say("trips.noHits"));
        list.getItems().setAll(hits.trips());
        select(desk.model().chosenProperty().get());
      }
    }
  }

  private void select(Optional<TripsModel.ChosenTrip> chosen) {
    chosen.ifPresent(
        trip -> {
          for (int place = 0; place < list.getItems().size(); place++) {
            if (list.getItems().get(place).id().equals(trip.id())) {
              list.getSelectionModel().select(place);
              return;
            }
          }
        });
  }
}
