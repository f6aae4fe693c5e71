package steadypull.ui;

import java.util.Optional;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;
import steadypull.drive.StripState;
import steadypull.ui.TextRow.Anchor;

/** The texts of one strip; its chart is drawn underneath by {@link PlotView}. */
final class StripView extends Pane {
  private final Text name = TextRow.text("name");
  private final Text trend = TextRow.text("trend");
  private final Text value = TextRow.text("value");
  private final Text degree = TextRow.text("degree");
  private final Text limit = TextRow.text("limit");
  private final Text note = TextRow.text("note");
  private final Text eased = TextRow.text("eased");
  private final Text word = TextRow.text("word");
  private final Text more = TextRow.text("more");
  private final Text detail = TextRow.text("detail");
  private final Text title = TextRow.text("title");
  private final Text hero = TextRow.text("hero");
  private final Text heroUnit = TextRow.text("hero-unit");
  private final GlyphView glyph = new GlyphView();
  private final Rectangle backing = new Rectangle();

  private final TextRow nameRow = new TextRow(Anchor.LEFT).add(name, 0);
  private final TextRow trendRow = new TextRow(Anchor.LEFT).add(trend, 0);
  private final TextRow valueRow = new TextRow(Anchor.RIGHT).add(value, 0).add(degree, 1);
  private final TextRow limitRow = new TextRow(Anchor.LEFT).add(limit, 0);
  private final TextRow noteRow = new TextRow(Anchor.CENTRE).add(note, 0);
  private final TextRow easedRow = new TextRow(Anchor.RIGHT).add(eased, 0);
  private final TextRow wordRow = new TextRow(Anchor.LEFT).add(word, 0).add(more, 14);
  private final TextRow detailRow = new TextRow(Anchor.LEFT).add(detail, 0);
  private final TextRow titleRow = new TextRow(Anchor.LEFT).add(title, 0);
  private final TextRow heroRow = new TextRow(Anchor.LEFT).add(hero, 0).add(heroUnit, 12);

  private StripSlot slot = new StripSlot(0, 0, StripSlot.Form.CALM);
  private final Text probe = new Text();
  private String named = "";
  private Optional<StripState> shown = Optional.empty();

  StripView() {
    setManaged(false);
    setAccessibleRole(AccessibleRole.TEXT);
    degree.setText("°");
    backing.getStyleClass().add("backing");
    getChildren()
        .addAll(
            nameRow, backing, trendRow, valueRow, limitRow, noteRow, easedRow, glyph, wordRow,
            detailRow, titleRow, heroRow);
    backing.setManaged(false);
    eased.layoutBoundsProperty().addListener(_ -> requestLayout());
    limit.layoutBoundsProperty().addListener(_ -> requestLayout());
    value.layoutBoundsProperty().addListener(_ -> requestLayout());
  }

  /** Shows a strip in a place. */
  void show(StripFace face, StripSlot place) {
    getStyleClass().setAll("strip", place.form().styleClass(), face.tone().styleClass());
    if (face.stale()) {
      getStyleClass().add("stale");
    }
    if (face.state().level() == StripState.StripLevel.DERATED) {
      getStyleClass().add("derated");
    }
    boolean leads = place.form() == StripSlot.Form.LEADING;
    fill(face, place.form());
    degree.setVisible(!face.value().equals(RoadFace.UNKNOWN));
    glyph.show(face.glyph());
    glyph.setVisible(!leads);
    backing.setVisible(leads && !face.limit().isEmpty());
    setAccessibleText(face.spoken());
    move(face, place);
  }

  private void fill(StripFace face, StripSlot.Form form) {
    boolean leads = form == StripSlot.Form.LEADING;
    named = face.name();
    trend.setText(form == StripSlot.Form.SMALL ? "" : leads ? face.trendInFull() : face.trend());
    value.setText(face.value());
    limit.setText(form == StripSlot.Form.SMALL ? "" : face.limit());
    note.setText(face.note());
    eased.setText(leads ? face.eased() : "");
    word.setText(leads ? "" : face.word());
    more.setText(leads ? "" : face.more());
    detail.setText(face.detail());
    title.setText(leads ? face.title() : "");
    hero.setText(leads ? face.hero() : "");
    heroUnit.setText(leads ? face.heroUnit() : "");
  }

  /** Moves it, as while sliding. */
  void move(StripFace face, StripSlot place) {
    slot = place;
    shown = Optional.of(face.state());
    setLayoutY(place.top());
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    StripPlaces at = StripPlaces.of(slot);
    placeSide(at);
    noteRow.at((DriveGeometry.NOW + DriveGeometry.CHART_RIGHT) / 2, at.noteBaseline());
    shown.ifPresent(this::placeEased);
    glyph.place(DriveGeometry.STATE_LEFT, at.glyphTop(), at.glyphScale());
    placeState(at);
    shown.ifPresent(this::placeLimit);
  }

  /** Value, name and trend share the room at the left. */
  private void placeSide(StripPlaces at) {
    valueRow.within(DriveGeometry.VALUE_RIGHT - DriveGeometry.TEXT_LEFT);
    NamePlace place =
        NamePlace.of(
            slot, named, !trend.getText().isEmpty(), valueRow.shownWidth(), this::nameWidth);
    valueRow.at(at.valueRight(valueRow.shownWidth()), place.value());
    trendRow.at(DriveGeometry.TEXT_LEFT, place.trend());
    trendRow.within(place.room());
    name.setText(place.text());
    nameRow.at(DriveGeometry.TEXT_LEFT, place.name());
    nameRow.within(place.room());
  }

  private double nameWidth(String text) {
    probe.setFont(name.getFont());
    probe.setText(text);
    return probe.getLayoutBounds().getWidth();
  }

  private void placeEased(StripState state) {
    double width = easedRow.naturalWidth();
    easedRow.at(
        StripLabels.easedRight(state, width),
        StripLabels.easedBaseline(state, slot, width) - slot.top());
  }

  private void placeState(StripPlaces at) {
    wordRow.at(at.wordLeft(), at.wordBaseline());
    wordRow.within(DriveGeometry.STATE_RIGHT - at.wordLeft());
    detailRow.at(at.wordLeft(), at.detailBaseline());
    detailRow.within(DriveGeometry.STATE_RIGHT - at.wordLeft());
    titleRow.at(DriveGeometry.STATE_LEFT, at.titleBaseline());
    titleRow.within(DriveGeometry.STATE_RIGHT - DriveGeometry.STATE_LEFT);
    heroRow.at(DriveGeometry.STATE_LEFT - 4, at.heroBaseline());
    heroRow.within(DriveGeometry.STATE_RIGHT - DriveGeometry.STATE_LEFT);
  }

  private void placeLimit(StripState state) {
    StripLabels.Spot spot = StripLabels.limit(state, slot, limitRow.naturalWidth());
    double baseline = spot.baseline() - slot.top();
    limitRow.at(spot.left(), baseline);
    backing.setX(spot.left() - 6);
    backing.setY(baseline - 18);
    backing.setWidth(limitRow.naturalWidth() + 12);
    backing.setHeight(23);
  }
}
