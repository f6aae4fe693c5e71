package steadypull.ui;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import steadypull.drive.PortChoice;

/** Second step: where the adapter is, how to get one where there is none, and ways to try. */
final class PortStep extends Pane {
  private final Words words;
  private final StartModel model;
  private final VBox rows = Parked.list();

  PortStep(Words words, StartModel model, Runnable lookAgain) {
    this.words = words;
    this.model = model;
    setPickOnBounds(false);
    double left = ParkedGeometry.PORT_LEFT;
    double footTop = ParkedGeometry.BOTTOM - ParkedGeometry.ROW_HEIGHT;
    PressButton look = new PressButton(Icon.NONE, words.say("start.look"), lookAgain);
    look.setId("look-again");
    look.place(left, footTop, ParkedGeometry.COLUMN_WIDTH, ParkedGeometry.ROW_HEIGHT);
    getChildren().addAll(Parked.step("2", words.say("start.port"), left));
    getChildren().addAll(Parked.scroll(rows, left, ParkedGeometry.LIST_TOP, footTop), look);
  }

  /** Ports come with the likeliest first: a simulated one in front means that none is likely. */
  void showFacts(StartModel.Facts facts) {
    rows.getChildren().clear();
    List<PortChoice> ports = facts.ports();
    if (facts.isLooking() && ports.isEmpty()) {
      rows.getChildren().add(Parked.remark(words.say("start.looking")));
    } else if (ports.isEmpty() || ports.getFirst().simulated()) {
      rows.getChildren().add(noAdapter());
    }
    ToggleGroup group = new ToggleGroup();
    boolean wasSimulated = false;
    for (PortChoice port : ports) {
      if (port.simulated() != wasSimulated) {
        wasSimulated = port.simulated();
        rows.getChildren()
            .add(Parked.caption(words.say(wasSimulated ? "start.tryOut" : "start.onBoard")));
      }
      rows.getChildren().add(row(port, group));
    }
    showChoice(model.choiceProperty().get());
  }

  private Node noAdapter() {
    double inner = ParkedGeometry.COLUMN_WIDTH - 2 * ParkedGeometry.PAD - ParkedGeometry.SCROLL_BAR;
    Text title = TextRow.text("note-title");
    title.setText(words.say("start.noAdapter"));
    Text how = TextRow.text("prose");
    how.setText(words.say("start.noAdapterHow"));
    how.setWrappingWidth(inner);
    VBox panel = new VBox(ParkedGeometry.NOTE_GAP, title, how);
    panel.getStyleClass().addAll("panel", "padded");
    return panel;
  }

  private ChoiceRow row(PortChoice port, ToggleGroup group) {
    boolean saysMore = !port.detail().equals(port.title());
    ChoiceRow row =
        new ChoiceRow(port.title(), saysMore ? port.detail().replace(" °", "\u00a0°") : "");
    if (port.simulated()) {
      row.warn(words.say("start.simulated"));
    }
    row.setUserData(port);
    row.setToggleGroup(group);
    row.setOnAction(_ -> choose(port));
    return row;
  }

  private void choose(PortChoice port) {
    model.choosePort(port);
    showChoice(model.choiceProperty().get());
  }

  void showChoice(StartModel.Choice choice) {
    choice.port().ifPresent(port -> Parked.select(rows, port));
  }
}
