package steadypull.ui;

import java.util.Optional;
import java.util.function.BiConsumer;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;
import steadypull.channel.QuantityFormat;
import steadypull.drive.WholeTrip;

/** The fields in which people describe a trip; each is kept as soon as it is left. */
final class TripFields extends Pane {
  private static final double HALF = (TripsGeometry.INNER_WIDTH - TripsGeometry.FIELD_GAP) / 2;
  private static final double THIRD = (TripsGeometry.INNER_WIDTH - 2 * TripsGeometry.FIELD_GAP) / 3;

  private final Words words;
  private final QuantityFormat quantities;
  private final BiConsumer<WholeTrip, TripSaidReader.Reading> keep;
  private final TextField label = new TextField();
  private final TextField tags = new TextField();
  private final TextArea note = new TextArea();
  private final TextField fitted = new TextField();
  private final TextField outside = new TextField();
  private final TextField outsideTemperature = new TextField();
  private final TextField mass = new TextField();
  private final TextField trailer = new TextField();

  private Optional<Filled> filled = Optional.empty();

  /** The trip whose fields these are, what they held at first, and what was read of them last. */
  private record Filled(WholeTrip trip, TripSaid shown, TripSaid last) {}

  TripFields(
      Words words, QuantityFormat quantities, BiConsumer<WholeTrip, TripSaidReader.Reading> keep) {
    this.words = words;
    this.quantities = quantities;
    this.keep = keep;
    setPickOnBounds(false);
    setManaged(false);
    add("label", label, 0, 0, HALF, "");
    add("tags", tags, 0, HALF + TripsGeometry.FIELD_GAP, HALF, "");
    add("note", note, 1, 0, TripsGeometry.INNER_WIDTH, "");
    add("fitted", fitted, 2, 0, HALF, "");
    add("outside", outside, 2, HALF + TripsGeometry.FIELD_GAP, HALF, "");
    double step = THIRD + TripsGeometry.FIELD_GAP;
    add("outsideTemp", outsideTemperature, 3, 0, THIRD, quantities.outsideTemperatureUnit());
    add("mass", mass, 3, step, THIRD, quantities.massUnit());
    add("trailer", trailer, 3, 2 * step, THIRD, quantities.massUnit());
    note.setWrapText(true);
    note.addEventFilter(KeyEvent.KEY_PRESSED, this::leaveNoteByTab);
  }

  private void add(
      String key, TextInputControl field, int row, double x, double width, String unit) {
    double left = TripsGeometry.INNER_LEFT + x;
    double top = TripsGeometry.FIELDS_TOP + row * TripsGeometry.FIELD_STEP;
    String caption = words.say("trips.field." + key);
    field.getStyleClass().add("entry");
    field.setId("trip-" + key);
    field.setAccessibleText(caption);
    field.setManaged(false);
    field.resizeRelocate(left, top + TripsGeometry.FIELD_LABEL, width, TripsGeometry.FIELD_HEIGHT);
    field.focusedProperty().addListener((_, _, isFocused) -> keepIfLeft(isFocused));
    if (field instanceof TextField line) {
      line.setOnAction(_ -> keepNow());
    }
    getChildren()
        .addAll(
            Parked.line(
                unit.isEmpty() ? caption : caption + ", " + unit, left, top + 18, "field-label"),
            field);
  }

  private void leaveNoteByTab(KeyEvent event) {
    if (event.getCode() == KeyCode.TAB) {
      event.consume();
      (event.isShiftDown() ? tags : fitted).requestFocus();
    }
  }

  private void keepIfLeft(boolean isFocused) {
    if (!isFocused) {
      keepNow();
    }
  }

  /** Fills the fields; those of the same trip are left as they are being typed. */
  void show(WholeTrip trip) {
    if (filled.filter(shown -> isSame(shown.trip(), trip)).isPresent()) {
      return;
    }
    filled = Optional.empty();
    TripSaid known = TripSaid.of(trip, quantities);
    label.setText(known.label());
    tags.setText(known.tags());
    note.setText(known.note());
    fitted.setText(known.fitted());
    outside.setText(known.outside());
    outsideTemperature.setText(known.outsideTemperature());
    mass.setText(known.mass());
    trailer.setText(known.trailerMass());
    TripSaid shown = typed();
    filled = Optional.of(new Filled(trip, shown, shown));
  }

  /** Forgets whose fields these are, so that the next trip fills them. */
  void clear() {
    filled = Optional.empty();
  }

  private static boolean isSame(WholeTrip one, WholeTrip other) {
    return one.summary().id().equals(other.summary().id());
  }

  /** Keeps what was typed and not kept yet. */
  void keepNow() {
    TripSaid typed = typed();
    filled
        .filter(known -> !known.last().equals(typed))
        .ifPresent(
            known -> {
              filled = Optional.of(new Filled(known.trip(), known.shown(), typed));
              keep.accept(
                  known.trip(),
                  TripSaidReader.read(known.trip(), known.shown(), typed, words, quantities));
            });
  }

  private TripSaid typed() {
    return new TripSaid(
        label.getText(),
        note.getText(),
        tags.getText(),
        fitted.getText(),
        outside.getText(),
        outsideTemperature.getText(),
        mass.getText(),
        trailer.getText());
  }
}
