package steadypull.ui;

import java.util.List;
import java.util.Optional;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import steadypull.channel.QuantityFormat;
import steadypull.drive.TripPicture;
import steadypull.drive.TripWindow;
import steadypull.store.TripSummary;
import steadypull.ui.TripsModel.ChosenTrip;

/** The sheet of the chosen trip: what is known, its drawing, or the fields to say more. */
final class TripSheet extends Pane {
  private final Words words;
  private final TripLineWords lines;
  private final QuantityFormat quantities;
  private final Text title = TextRow.text("headline");
  private final Text summary = TextRow.text("prose");
  private final Text nearest = TextRow.text("note-title");
  private final Text span = TextRow.text("prose");
  private final Text told = TextRow.text("prose");
  private final TripStrip strip;
  private final TextRow nearestRow = row(nearest, TripsGeometry.STRIP_WORDS_BASELINE);
  private final VBox facts = new VBox();
  private final ScrollPane factsPane = new ScrollPane(facts);
  private final TripFields fields;
  private final PressButton foot;
  private List<TripFactWords.Fact> toldFacts = List.of();
  private boolean isEditing;

  TripSheet(Words words, TripLineWords lines, QuantityFormat quantities, TripsDesk desk) {
    this.words = words;
    this.lines = lines;
    this.quantities = quantities;
    setManaged(false);
    setPickOnBounds(false);
    fields =
        new TripFields(words, quantities, (trip, reading) -> desk.keep(trip, reading, quantities));
    strip = new TripStrip(words.say("trips.strip"), desk::show);
    foot = new PressButton(Icon.NONE, words.say("trips.edit"), this::toggleEditing);
    foot.setId("trips-edit");
    build();
    TripsModel model = desk.model();
    model.chosenProperty().addListener((_, _, chosen) -> show(chosen));
    model.toldProperty().addListener((_, _, changed) -> show(changed));
    show(model.chosenProperty().get());
    show(model.toldProperty().get());
  }

  private void build() {
    double width = TripsGeometry.INNER_WIDTH;
    factsPane.getStyleClass().add("list");
    factsPane.setFitToWidth(true);
    factsPane.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    factsPane.setManaged(false);
    factsPane.setId("trips-facts");
    told.setWrappingWidth(width);
    told.setManaged(false);
    told.layoutBoundsProperty().addListener(_ -> arrangeTold());
    foot.place(TripsGeometry.INNER_LEFT, TripsGeometry.FOOT_TOP, width, TripsGeometry.FOOT_HEIGHT);
    getChildren()
        .addAll(
            Parked.panel(
                TripsGeometry.SHEET_LEFT,
                TripsGeometry.SHEET_TOP,
                TripsGeometry.SHEET_WIDTH,
                ParkedGeometry.BOTTOM - TripsGeometry.SHEET_TOP),
            row(title, TripsGeometry.TITLE_BASELINE),
            row(summary, TripsGeometry.SUBTITLE_BASELINE),
            strip,
            nearestRow,
            new TextRow(TextRow.Anchor.RIGHT)
                .add(span, 0)
                .at(
                    TripsGeometry.INNER_LEFT + TripsGeometry.INNER_WIDTH,
                    TripsGeometry.STRIP_WORDS_BASELINE),
            factsPane,
            fields,
            told,
            foot);
  }

  private static TextRow row(Text text, double baseline) {
    return new TextRow(TextRow.Anchor.LEFT)
        .add(text, 0)
        .at(TripsGeometry.INNER_LEFT, baseline)
        .within(TripsGeometry.INNER_WIDTH);
  }

  void setLight(Light light) {
    strip.setLight(light);
  }

  void setDensity(double density) {
    strip.setDensity(density);
  }

  /** Whether the fields are shown. */
  boolean isEditing() {
    return isEditing;
  }

  /** Changes between what is known and the fields to say more; what was typed is kept. */
  void toggleEditing() {
    fields.keepNow();
    isEditing = !isEditing;
    arrange();
  }

  /** Keeps what was typed and not kept yet. */
  void keepNow() {
    fields.keepNow();
  }

  private void show(Optional<ChosenTrip> chosen) {
    foot.setVisible(chosen.isPresent());
    chosen.ifPresentOrElse(this::show, this::showNone);
    arrange();
  }

  private void showNone() {
    isEditing = false;
    fields.clear();
    title.setText("");
    summary.setText(words.say("trips.noneChosen"));
    nearest.setText("");
    span.setText("");
    strip.show(Optional.empty());
    tell(List.of());
  }

  private void show(ChosenTrip chosen) {
    TripSummary trip = chosen.trip().summary();
    title.setText(lines.day(trip));
    summary.setText(lines.summary(trip));
    nearest.setText(chosen.picture().map(this::headroom).orElse(""));
    TripWindow whole = TripWindow.whole(trip);
    TripWindow window = chosen.shown().map(TripPicture::window).orElse(whole);
    span.setText(lines.span(trip, window));
    nearestRow.within(
        window.equals(whole) ? TripsGeometry.NEAREST_WIDTH : TripsGeometry.NEAREST_BESIDE_SECONDS);
    strip.show(Optional.of(chosen));
    tell(TripFactWords.of(chosen, words, quantities));
    fields.show(chosen.trip());
  }

  /** Rows are built anew only where they say something else: not at each step closer. */
  private void tell(List<TripFactWords.Fact> changed) {
    if (!changed.equals(toldFacts)) {
      toldFacts = changed;
      facts.getChildren().setAll(changed.stream().map(this::row).toList());
    }
  }

  private String headroom(TripPicture picture) {
    return picture
        .nearest()
        .map(
            line -> {
              double kelvin = line.leastHeadroomKelvin();
              return words.say(
                  kelvin >= 0 ? "trips.leastUnder" : "trips.leastOver",
                  quantities.temperatureDifference(Math.abs(kelvin)),
                  words.name(line.channel()));
            })
        .orElseGet(() -> words.say("trips.noLimits"));
  }

  private HBox row(TripFactWords.Fact fact) {
    Text caption = TextRow.text("prose");
    caption.setText(fact.caption());
    caption.setWrappingWidth(TripsGeometry.FACT_CAPTION_WIDTH);
    Text value = TextRow.text("prose", "bold");
    value.setText(fact.value());
    value.setWrappingWidth(
        TripsGeometry.INNER_WIDTH
            - TripsGeometry.FACT_CAPTION_WIDTH
            - TripsGeometry.FACT_GAP
            - ParkedGeometry.SCROLL_BAR);
    if (fact.tone() != Tone.NEUTRAL) {
      value.getStyleClass().add(fact.tone().styleClass());
    }
    HBox row = new HBox(TripsGeometry.FACT_GAP, caption, value);
    row.getStyleClass().add("fact");
    return row;
  }

  private void show(TripsModel.Told changed) {
    told.getStyleClass().removeAll("bold", "caution");
    switch (changed) {
      case TripsModel.Told.Nothing _ -> told.setText("");
      case TripsModel.Told.Done(String done) -> told.setText(done);
      case TripsModel.Told.Refused(String message) -> warn(message);
      case TripsModel.Told.DoneWithLoss(String message) -> warn(message);
    }
    arrange();
  }

  private void warn(String message) {
    told.getStyleClass().addAll("bold", "caution");
    told.setText(message);
  }

  private void arrange() {
    fields.setVisible(isEditing);
    strip.setVisible(!isEditing);
    nearest.setVisible(!isEditing);
    span.setVisible(!isEditing);
    factsPane.setVisible(!isEditing);
    foot.show(Icon.NONE, words.say(isEditing ? "trips.editDone" : "trips.edit"));
    arrangeTold();
  }

  /** What is told grows upwards from the button; the facts take what it leaves. */
  private void arrangeTold() {
    double height = told.getText().isEmpty() ? 0 : told.getLayoutBounds().getHeight();
    double top = TripsGeometry.TOLD_BOTTOM - height;
    told.relocate(TripsGeometry.INNER_LEFT, top);
    factsPane.resizeRelocate(
        TripsGeometry.INNER_LEFT,
        TripsGeometry.FACTS_TOP,
        TripsGeometry.INNER_WIDTH,
        top - TripsGeometry.FACT_GAP - TripsGeometry.FACTS_TOP);
  }
}
