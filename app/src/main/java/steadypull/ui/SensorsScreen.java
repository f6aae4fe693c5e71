package steadypull.ui;

import java.util.List;
import java.util.function.Consumer;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import steadypull.drive.VehicleSensors;
import steadypull.vehicle.role.RoleFinding;
import steadypull.vehicle.role.RoleWords;
import steadypull.vehicle.role.Suspect;

/**
 * Where each temperature sensor of a vehicle seems to sit, why, and what is not known yet; a person
 * confirms each by itself or all at once. FX thread only.
 */
final class SensorsScreen implements Screen {
  private final Words words;
  private final RoleWords roleWords;
  private final Consumer<List<RoleFinding.Proposed>> confirm;
  private final Pane root;
  private final VBox rows = Parked.list();
  private final PressButton all;

  /**
   * Builds the screen.
   *
   * @param vehicleName whose sensors
   * @param confirm confirms proposals
   * @param back leaves the screen
   */
  SensorsScreen(
      Words words,
      RoleWords roleWords,
      String vehicleName,
      SensorsModel model,
      Consumer<List<RoleFinding.Proposed>> confirm,
      Runnable back) {
    this.words = words;
    this.roleWords = roleWords;
    this.confirm = confirm;
    root = Parked.page(words.say("sensors.title", vehicleName), words.say("sensors.subtitle"));
    double footTop = ParkedGeometry.BOTTOM - ParkedGeometry.ROW_HEIGHT;
    double width = ParkedGeometry.RIGHT - ParkedGeometry.LEFT;
    PressButton leave = new PressButton(Icon.NONE, words.say("sensors.back"), back);
    leave.setId("sensors-back");
    leave.place(
        ParkedGeometry.LEFT, footTop, ParkedGeometry.COLUMN_WIDTH, ParkedGeometry.ROW_HEIGHT);
    all = new PressButton(Icon.NONE, words.say("sensors.confirmAll"), () -> {}).solid();
    all.setId("confirm-all");
    all.place(
        ParkedGeometry.RIGHT - ParkedGeometry.COLUMN_WIDTH,
        footTop,
        ParkedGeometry.COLUMN_WIDTH,
        ParkedGeometry.ROW_HEIGHT);
    root.getChildren()
        .addAll(
            Parked.scroll(rows, ParkedGeometry.LEFT, ParkedGeometry.SENSORS_TOP, width, footTop),
            leave,
            all);
    root.addEventHandler(KeyEvent.KEY_PRESSED, event -> leaveByKey(event, back));
    model.stateProperty().addListener((_, _, state) -> show(state));
    show(model.stateProperty().get());
  }

  private static void leaveByKey(KeyEvent event, Runnable back) {
    if (event.getCode() == KeyCode.ESCAPE) {
      back.run();
      event.consume();
    }
  }

  @Override
  public Pane root() {
    return root;
  }

  private void show(SensorsModel.State state) {
    rows.getChildren().clear();
    all.setVisible(false);
    switch (state) {
      case SensorsModel.State.Looking _ ->
          rows.getChildren().add(Parked.remark(words.say("sensors.looking")));
      case SensorsModel.State.Refused(String message) ->
          rows.getChildren().add(SensorRow.trouble(message));
      case SensorsModel.State.Found(VehicleSensors sensors) -> show(sensors);
    }
  }

  private void show(VehicleSensors sensors) {
    for (RoleFinding finding : sensors.survey().findings()) {
      rows.getChildren().add(new SensorRow(words, roleWords, sensors, finding, confirm));
    }
    for (Suspect suspect : sensors.survey().suspects()) {
      rows.getChildren().add(SensorRow.suspicion(roleWords.suspicion(suspect)));
    }
    all.setVisible(!sensors.unconfirmed().isEmpty());
    all.setOnAction(_ -> confirm.accept(sensors.unconfirmed()));
  }
}
