package steadypull.ui;

import javafx.animation.PauseTransition;
import javafx.scene.layout.Pane;
import javafx.util.Duration;

/** The three buttons at the right that never move. */
final class RailView extends Pane {
  private static final Duration CONFIRMED = Duration.seconds(2);

  private final Words words;
  private final PressButton mark;
  private final PressButton light;
  private final PauseTransition confirmation = new PauseTransition(CONFIRMED);

  RailView(Words words, DriveActions actions) {
    this.words = words;
    setManaged(false);
    setPickOnBounds(false);
    mark = new PressButton(Icon.FLAG, words.say("rail.mark"), () -> mark(actions));
    light = new PressButton(Icon.MOON, words.say("rail.night"), actions.light());
    PressButton menu = new PressButton(Icon.LINES, words.say("rail.menu"), actions.menu());
    mark.setId("mark");
    light.setId("light");
    menu.setId("menu");
    place(mark, DriveGeometry.MARK_TOP, DriveGeometry.MARK_HEIGHT);
    place(light, DriveGeometry.LIGHT_TOP, DriveGeometry.RAIL_BUTTON_HEIGHT);
    place(menu, DriveGeometry.MENU_TOP, DriveGeometry.RAIL_BUTTON_HEIGHT);
  }

  /** Sets a mark and says so for a moment. */
  private void mark(DriveActions actions) {
    actions.mark().run();
    mark.show(Icon.CHECK, words.say("rail.marked"));
    confirmation.setOnFinished(_ -> mark.show(Icon.FLAG, words.say("rail.mark")));
    confirmation.playFromStart();
  }

  /** Sets a mark as if the button had been pressed. */
  void pressMark() {
    mark.fire();
  }

  /** Marks belong to a drive that is recorded. */
  void withoutMark() {
    mark.setDisable(true);
  }

  /** Offers the light that is not on. */
  void setLight(Light shown) {
    switch (shown) {
      case DAY -> light.show(Icon.MOON, words.say("rail.night"));
      case NIGHT -> light.show(Icon.SUN, words.say("rail.day"));
    }
  }

  private void place(PressButton button, double top, double height) {
    button.place(DriveGeometry.RAIL_LEFT, top, DriveGeometry.RAIL_WIDTH, height);
    getChildren().add(button);
  }
}
