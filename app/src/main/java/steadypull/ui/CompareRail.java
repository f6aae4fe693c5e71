package steadypull.ui;

import javafx.scene.layout.Pane;

/** The buttons at the right of the screen that compares runs. */
final class CompareRail extends Pane {
  private final PressButton channel;
  private final PressButton report;

  /**
   * What the rail can ask for.
   *
   * @param runs chooses trips
   * @param channel chooses the temperature
   * @param report writes the form
   * @param menu leaves the screen
   */
  record Actions(Runnable runs, Runnable channel, Runnable report, Runnable menu) {}

  CompareRail(Words words, Actions actions) {
    setManaged(false);
    setPickOnBounds(false);
    button("compare-runs", Icon.RUNS, words.say("compare.runs"), actions.runs(), 0);
    channel =
        button("compare-channel", Icon.GAUGE, words.say("compare.channel"), actions.channel(), 1);
    report = button("compare-report", Icon.SHEET, words.say("compare.report"), actions.report(), 2);
    button("compare-menu", Icon.LINES, words.say("rail.menu"), actions.menu(), 3);
    show(false, false);
  }

  /** Offers what there is something for. */
  void show(boolean hasChannels, boolean hasComparison) {
    channel.setDisable(!hasChannels);
    report.setDisable(!hasComparison);
  }

  private PressButton button(String id, Icon icon, String text, Runnable action, int place) {
    PressButton button = new PressButton(icon, text, action);
    button.setId(id);
    button.getStyleClass().addAll("tight", "rail");
    button.place(
        CompareGeometry.RAIL_LEFT,
        CompareGeometry.RAIL_TOP + place * (CompareGeometry.RAIL_HEIGHT + CompareGeometry.RAIL_GAP),
        CompareGeometry.RAIL_WIDTH,
        CompareGeometry.RAIL_HEIGHT);
    getChildren().add(button);
    return button;
  }
}
