package steadypull.ui;

import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import steadypull.channel.Channel;

/** Chooses the temperature that is compared. */
final class CompareChannelPick extends Pane {
  private static final double WIDTH = 760;
  private static final double TOP = 84;

  private final Words words;
  private final CompareDesk desk;
  private final Runnable done;
  private final VBox rows = Parked.list();

  CompareChannelPick(Words words, CompareDesk desk, Runnable done) {
    this.words = words;
    this.desk = desk;
    this.done = done;
    setManaged(false);
    setPickOnBounds(false);
    getChildren().add(Parked.scroll(rows, CompareGeometry.LEFT, TOP, WIDTH, ParkedGeometry.BOTTOM));
  }

  /** Shows the temperatures that all chosen trips have. */
  void open() {
    rows.getChildren().clear();
    ToggleGroup group = new ToggleGroup();
    for (Channel channel : desk.model().channels()) {
      ChoiceRow row = new ChoiceRow(words.name(channel), "");
      row.setId("compare-" + channel.id());
      row.setToggleGroup(group);
      row.setSelected(channel.equals(desk.model().channelProperty().get()));
      row.setOnAction(
          _ -> {
            desk.choose(channel);
            done.run();
          });
      rows.getChildren().add(row);
    }
  }
}
