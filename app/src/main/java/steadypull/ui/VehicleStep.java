package steadypull.ui;

import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import steadypull.drive.PortChoice;

/** First step: a name for the vehicle, the ones driven before, and what its limits are. */
final class VehicleStep extends Pane {
  private final Words words;
  private final StartModel model;
  private final TextField name = new TextField();
  private final VBox known = Parked.list();
  private final PressRow sensors;
  private final Text noteTitle = TextRow.text("note-title");
  private final Text note = TextRow.text("prose");
  private final Text command = TextRow.text("command");

  VehicleStep(Words words, StartModel model, Runnable showSensors) {
    this.words = words;
    this.model = model;
    this.sensors = new PressRow(words.say("start.sensors"), showSensors);
    setPickOnBounds(false);
    double left = ParkedGeometry.LEFT;
    getChildren().addAll(Parked.step("1", words.say("start.vehicle"), left));
    getChildren()
        .add(
            Parked.line(
                words.say("start.name"), left, ParkedGeometry.LABEL_BASELINE, "field-label"));
    buildName();
    getChildren().add(Parked.scroll(known, left, ParkedGeometry.KNOWN_TOP, sensorsTop()));
    placeSensors(left);
    buildNote(left);
  }

  private static double noteTop() {
    return ParkedGeometry.BOTTOM - ParkedGeometry.NOTE_HEIGHT;
  }

  private static double sensorsTop() {
    return noteTop() - ParkedGeometry.ROW_GAP - ParkedGeometry.ROW_HEIGHT;
  }

  private void placeSensors(double left) {
    sensors.setId("sensors");
    sensors.place(left, sensorsTop(), ParkedGeometry.COLUMN_WIDTH, ParkedGeometry.ROW_HEIGHT);
    getChildren().add(sensors);
  }

  private void buildName() {
    name.getStyleClass().add("entry");
    name.setId("new-vehicle");
    name.setPromptText(words.say("start.typeName"));
    name.setAccessibleText(words.say("start.name"));
    name.textProperty().addListener((_, _, typed) -> model.chooseVehicle(typed));
    name.setManaged(false);
    name.resizeRelocate(
        ParkedGeometry.LEFT,
        ParkedGeometry.FIELD_TOP,
        ParkedGeometry.COLUMN_WIDTH,
        ParkedGeometry.ROW_HEIGHT);
    getChildren().add(name);
  }

  private void buildNote(double left) {
    double inner = ParkedGeometry.COLUMN_WIDTH - 2 * ParkedGeometry.PAD;
    for (Text text : new Text[] {noteTitle, note, command}) {
      text.setWrappingWidth(inner);
    }
    VBox lines = new VBox(ParkedGeometry.NOTE_GAP, noteTitle, note, command);
    lines.relocate(left + ParkedGeometry.PAD, noteTop() + ParkedGeometry.NOTE_PAD);
    getChildren()
        .addAll(
            Parked.panel(left, noteTop(), ParkedGeometry.COLUMN_WIDTH, ParkedGeometry.NOTE_HEIGHT),
            lines);
  }

  void showFacts(StartModel.Facts facts) {
    known.getChildren().clear();
    ToggleGroup group = new ToggleGroup();
    if (!facts.vehicles().isEmpty()) {
      known.getChildren().add(Parked.caption(words.say("start.known")));
    } else if (!facts.isLooking()) {
      known.getChildren().add(Parked.remark(words.say("start.noneKnown")));
    }
    for (String vehicle : facts.vehicles()) {
      ChoiceRow row = new ChoiceRow(vehicle, "");
      row.setUserData(vehicle);
      row.setToggleGroup(group);
      row.setOnAction(_ -> choose(vehicle));
      known.getChildren().add(row);
    }
    showChoice(model.choiceProperty().get());
  }

  private void choose(String vehicle) {
    name.clear();
    model.chooseVehicle(vehicle);
    showChoice(model.choiceProperty().get());
  }

  void showChoice(StartModel.Choice choice) {
    Parked.select(known, choice.vehicle());
    boolean isKnown = model.factsProperty().get().vehicles().contains(choice.vehicle());
    if (!isKnown && name.getText().isBlank()) {
      name.setText(choice.vehicle());
    }
    sensors.setVisible(isKnown);
    boolean isOwn = choice.port().map(PortChoice::simulated).orElse(false);
    noteTitle.setText(words.say(isOwn ? "start.ownTitle" : "start.limitsTitle"));
    note.setText(words.say(isOwn ? "start.own" : "start.limits"));
    command.setText(isOwn ? "" : words.say("start.limitsCommand"));
  }
}
