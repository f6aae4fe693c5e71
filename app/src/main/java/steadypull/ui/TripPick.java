package steadypull.ui;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import steadypull.store.TripSummary;

/** Takes the place of the list while a vehicle or tag is chosen, or something brought back. */
final class TripPick extends Pane {
  private static final int MOST_OF_A_NAME = 26;

  private final Words words;
  private final TripLineWords lines;
  private final TripsDesk desk;
  private final Runnable done;
  private final Pane title = new Pane();
  private final VBox rows = Parked.list();

  /** What is chosen from. */
  enum Kind {
    VEHICLES("trips.chooseVehicle"),
    TAGS("trips.chooseTag"),
    THROWN_AWAY("trips.chooseThrown");

    private final String key;

    Kind(String key) {
      this.key = key;
    }
  }

  /**
   * Builds it, hidden.
   *
   * @param done returns to the list
   */
  TripPick(Words words, TripLineWords lines, TripsDesk desk, Runnable done) {
    this.words = words;
    this.lines = lines;
    this.desk = desk;
    this.done = done;
    setManaged(false);
    setPickOnBounds(false);
    setVisible(false);
    double foot = ParkedGeometry.BOTTOM - ParkedGeometry.ROW_HEIGHT;
    PressRow back = new PressRow(words.say("trips.toList"), done);
    back.setId("trips-to-list");
    back.place(ParkedGeometry.LEFT, foot, TripsGeometry.LIST_WIDTH, ParkedGeometry.ROW_HEIGHT);
    getChildren()
        .addAll(
            title,
            Parked.scroll(
                rows, ParkedGeometry.LEFT, ParkedGeometry.LIST_TOP, TripsGeometry.LIST_WIDTH, foot),
            back);
  }

  /** Shows what there is to choose from at present. */
  void open(Kind kind) {
    title
        .getChildren()
        .setAll(
            Parked.line(
                words.say(kind.key),
                ParkedGeometry.LEFT,
                ParkedGeometry.STEP_BASELINE,
                "field-label"));
    rows.getChildren().clear();
    fill(kind);
    setVisible(true);
  }

  private void fill(Kind kind) {
    TripQuery query = desk.model().queryProperty().get();
    switch (kind) {
      case VEHICLES ->
          choices(
              words.say("trips.allVehicles"),
              hits().map(TripHits::vehicles).orElse(List.of()),
              query.vehicle(),
              chosen -> desk.look(query.withVehicle(chosen)));
      case TAGS ->
          choices(
              words.say("trips.allTags"),
              hits().map(TripHits::tags).orElse(List.of()),
              query.tag(),
              chosen -> desk.look(query.withTag(chosen)));
      case THROWN_AWAY -> desk.model().thrownAwayProperty().get().forEach(this::thrown);
    }
  }

  private Optional<TripHits> hits() {
    return desk.model().listedProperty().get() instanceof TripsModel.Listed.Found(TripHits hits)
        ? Optional.of(hits)
        : Optional.empty();
  }

  private void choices(
      String all, List<String> names, Optional<String> now, Consumer<Optional<String>> choose) {
    ToggleGroup group = new ToggleGroup();
    choice(all, Optional.empty(), now, group, choose);
    names.forEach(name -> choice(name, Optional.of(name), now, group, choose));
  }

  private void choice(
      String text,
      Optional<String> meant,
      Optional<String> now,
      ToggleGroup group,
      Consumer<Optional<String>> choose) {
    ChoiceRow row = new ChoiceRow(text, "");
    row.setToggleGroup(group);
    row.setSelected(meant.equals(now));
    row.setOnAction(
        _ -> {
          choose.accept(meant);
          done.run();
        });
    rows.getChildren().add(row);
  }

  private void thrown(TripSummary trip) {
    PressRow row =
        new PressRow(
            words.say("trips.bringBackOf", lines.moment(trip)),
            () -> {
              desk.bringBack(trip);
              done.run();
            });
    row.show(
        words.say("trips.bringBackOf", lines.moment(trip)), lines.summary(trip, MOST_OF_A_NAME));
    row.getStyleClass().add("tight");
    row.setMinHeight(ParkedGeometry.ROW_HEIGHT);
    row.setMaxWidth(Double.MAX_VALUE);
    rows.getChildren().add(row);
  }
}
