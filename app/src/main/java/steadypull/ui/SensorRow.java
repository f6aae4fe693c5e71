package steadypull.ui;

import java.util.List;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import steadypull.drive.VehicleSensors;
import steadypull.vehicle.role.RoleFinding;
import steadypull.vehicle.role.RoleWords;

/** One place: its name and sensor, why, and a button that confirms it. */
final class SensorRow extends HBox {
  private static final double GAP = 20;
  private static final double GLYPH_SCALE = 0.42;
  private static final double GLYPH_SIZE = 20;
  private static final double WHY_WIDTH =
      ParkedGeometry.RIGHT
          - ParkedGeometry.LEFT
          - ParkedGeometry.SENSORS_NAME_WIDTH
          - ParkedGeometry.SENSORS_BUTTON_WIDTH
          - 2 * ParkedGeometry.PAD
          - 2 * GAP
          - ParkedGeometry.SCROLL_BAR;

  private final Words words;
  private final RoleWords roleWords;

  SensorRow(
      Words words,
      RoleWords roleWords,
      VehicleSensors sensors,
      RoleFinding finding,
      Consumer<List<RoleFinding.Proposed>> confirm) {
    super(GAP);
    this.words = words;
    this.roleWords = roleWords;
    getStyleClass().addAll("panel", "sensor-row");
    setAlignment(Pos.CENTER_LEFT);
    getChildren()
        .addAll(
            name(finding),
            wrapped(roleWords.because(finding), WHY_WIDTH, "prose"),
            action(sensors, finding, confirm));
  }

  /** A refusal in place of rows. */
  static Node trouble(String message) {
    return wrapped(message, ParkedGeometry.MENU_WIDTH, "trouble");
  }

  /** A sensor that is not to be believed. */
  static Node suspicion(String sentence) {
    Text text =
        wrapped(
            sentence,
            ParkedGeometry.RIGHT - ParkedGeometry.LEFT - 3 * ParkedGeometry.PAD,
            "prose",
            "caution");
    HBox row = new HBox(ParkedGeometry.ROW_GAP, small(Glyph.CAUTION), text);
    row.setAlignment(Pos.CENTER_LEFT);
    row.getStyleClass().addAll("panel", "sensor-row");
    return row;
  }

  private Node name(RoleFinding finding) {
    Text place =
        wrapped(
            roleWords.place(finding.channel()), ParkedGeometry.SENSORS_NAME_WIDTH, "note-title");
    Text sensor = wrapped(sensor(finding), ParkedGeometry.SENSORS_NAME_WIDTH, "prose");
    VBox lines = new VBox(place, sensor);
    lines.setAlignment(Pos.CENTER_LEFT);
    fix(lines, ParkedGeometry.SENSORS_NAME_WIDTH);
    return lines;
  }

  private String sensor(RoleFinding finding) {
    return switch (finding) {
      case RoleFinding.Proposed proposed ->
          words.say(
              "sensors.proposed",
              roleWords.sensor(proposed.signalKey()),
              roleWords.confidence(proposed.confidence()));
      case RoleFinding.CannotTell _ -> words.say("sensors.cannotTell");
    };
  }

  private Node action(
      VehicleSensors sensors, RoleFinding finding, Consumer<List<RoleFinding.Proposed>> confirm) {
    return switch (finding) {
      case RoleFinding.CannotTell _ -> mark(Glyph.UNKNOWN, "");
      case RoleFinding.Proposed proposed ->
          sensors.isConfirmed(proposed)
              ? mark(Glyph.HOLDS, words.say("sensors.confirmed"))
              : button(proposed, confirm);
    };
  }

  private Node button(RoleFinding.Proposed proposed, Consumer<List<RoleFinding.Proposed>> confirm) {
    PressButton button =
        new PressButton(
            Icon.NONE, words.say("sensors.confirm"), () -> confirm.accept(List.of(proposed)));
    button.setId("confirm-" + proposed.channel().id());
    button.setMinSize(ParkedGeometry.SENSORS_BUTTON_WIDTH, ParkedGeometry.ROW_HEIGHT);
    button.setAccessibleText(
        words.say("sensors.confirm") + ", " + roleWords.place(proposed.channel()));
    return button;
  }

  private static Node mark(Glyph glyph, String word) {
    Text text = TextRow.text("note-title");
    text.setText(word);
    HBox mark = new HBox(ParkedGeometry.ROW_GAP, small(glyph), text);
    mark.setAlignment(Pos.CENTER_LEFT);
    fix(mark, ParkedGeometry.SENSORS_BUTTON_WIDTH);
    return mark;
  }

  private static Pane small(Glyph glyph) {
    GlyphView view = new GlyphView();
    view.show(glyph);
    view.place(0, 0, GLYPH_SCALE);
    Pane box = new Pane(view);
    box.setMinSize(GLYPH_SIZE, GLYPH_SIZE);
    box.setMaxSize(GLYPH_SIZE, GLYPH_SIZE);
    return box;
  }

  private static void fix(Pane pane, double width) {
    pane.setMinWidth(width);
    pane.setMaxWidth(width);
  }

  private static Text wrapped(String words, double width, String... styleClasses) {
    Text text = TextRow.text(styleClasses);
    text.setText(words);
    text.setWrappingWidth(width);
    return text;
  }
}
