package steadypull.ui;

import javafx.geometry.Pos;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import steadypull.drive.PortChoice;

/** Third step: what to know before, what will be driven, and the button that begins it. */
final class BeforeStep extends Pane {
  private final Words words;
  private final Text chosen = TextRow.text("note-title");
  private final Text trouble = TextRow.text("trouble");
  private final VBox foot = new VBox(ParkedGeometry.NOTE_GAP);
  private final PressButton drive;

  BeforeStep(Words words, StartModel model, Runnable begin) {
    this.words = words;
    drive = new PressButton(Icon.NONE, words.say("start.drive"), begin).solid();
    drive.getStyleClass().add("large");
    drive.setId("drive");
    drive.setDefaultButton(true);
    setPickOnBounds(false);
    double left = ParkedGeometry.BEFORE_LEFT;
    double width = ParkedGeometry.RIGHT - left;
    double driveTop = ParkedGeometry.BOTTOM - ParkedGeometry.DRIVE_HEIGHT;
    drive.place(left, driveTop, width, ParkedGeometry.DRIVE_HEIGHT);
    getChildren().addAll(Parked.step("3", words.say("start.before"), left));
    buildPanel(left, width, driveTop - ParkedGeometry.ROW_GAP);
    getChildren().add(drive);
    show(model.choiceProperty().get(), model.stageProperty().get());
  }

  private void buildPanel(double left, double width, double bottom) {
    double top = ParkedGeometry.LIST_TOP;
    double inner = width - 2 * ParkedGeometry.PAD;
    chosen.setWrappingWidth(inner);
    trouble.setWrappingWidth(inner);
    foot.setAlignment(Pos.BOTTOM_LEFT);
    foot.setManaged(false);
    foot.setPickOnBounds(false);
    foot.resizeRelocate(
        left + ParkedGeometry.PAD,
        ParkedGeometry.PROSE_TOP,
        inner,
        bottom - ParkedGeometry.NOTE_PAD - ParkedGeometry.PROSE_TOP);
    getChildren()
        .addAll(
            Parked.panel(left, top, width, bottom - top),
            Parked.prose(
                Cautions.before(words),
                left + ParkedGeometry.PAD,
                ParkedGeometry.PROSE_TOP,
                inner,
                "caution-text"),
            foot);
  }

  void show(StartModel.Choice choice, StartModel.Stage stage) {
    String refusal =
        switch (stage) {
          case StartModel.Stage.Asking _, StartModel.Stage.Opening _ -> "";
          case StartModel.Stage.Refused refused -> refused.message();
        };
    boolean isOpening = stage instanceof StartModel.Stage.Opening;
    trouble.setText(refusal);
    chosen.setText(chosen(choice));
    foot.getChildren().setAll(refusal.isEmpty() ? chosen : trouble);
    drive.show(Icon.NONE, words.say(isOpening ? "start.opening" : "start.drive"));
    drive.setDisable(isOpening || !choice.isComplete());
  }

  private String chosen(StartModel.Choice choice) {
    if (choice.port().isEmpty()) {
      return words.say("start.choosePort");
    }
    PortChoice port = choice.port().get();
    if (port.simulated()) {
      return words.say("start.chosenSimulated", port.title());
    }
    return choice.vehicle().isBlank()
        ? words.say("start.chooseName")
        : words.say("start.chosen", choice.vehicle(), port.title());
  }
}
