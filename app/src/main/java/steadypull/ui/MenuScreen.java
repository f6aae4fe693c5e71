package steadypull.ui;

import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;
import steadypull.channel.UnitSystem;

/** The full list of what else can be done, in large rows of two columns. FX thread only. */
final class MenuScreen implements Screen {
  private static final int ROWS = 6;

  private final Words words;
  private final Pane root;
  private final PressRow back;
  private final PressRow end;
  private final PressRow units;
  private final PressRow light;
  private final PressRow sound;
  private int rows;

  /**
   * What the menu can ask for.
   *
   * @param back returns to the drive
   * @param end ends the drive
   * @param units changes between metric and imperial
   * @param light changes between day, night and the clock
   * @param sound changes how loud it is
   * @param sensors opens the list of sensors
   * @param trips opens the kept trips
   * @param codes shows the trouble codes
   * @param compare compares trips before and after a change
   * @param backup copies the library
   * @param about opens the cautions
   */
  record Actions(
      Runnable back,
      Runnable end,
      Runnable units,
      Runnable light,
      Runnable sound,
      Runnable sensors,
      Runnable trips,
      Runnable codes,
      Runnable compare,
      Runnable backup,
      Runnable about) {}

  MenuScreen(Words words, Actions actions) {
    this.words = words;
    this.root = Parked.page(words.say("menu.title"), "");
    back = row("menu-back", words.say("menu.back"), actions.back());
    end = row("menu-end", words.say("menu.end"), actions.end());
    row("menu-trips", words.say("trips.title"), actions.trips())
        .show(words.say("trips.title"), words.say("menu.tripsNote"));
    row("menu-compare", words.say("compare.title"), actions.compare())
        .show(words.say("compare.title"), words.say("menu.compareNote"));
    row("menu-sensors", words.say("menu.sensors"), actions.sensors())
        .show(words.say("menu.sensors"), words.say("menu.sensorsNote"));
    row("menu-codes", words.say("menu.codes"), actions.codes());
    units = row("menu-units", words.say("menu.units"), actions.units());
    light = row("menu-light", words.say("menu.light"), actions.light());
    sound = row("menu-sound", words.say("menu.sound"), actions.sound());
    row("menu-backup", words.say("menu.backup"), actions.backup())
        .show(words.say("menu.backup"), words.say("menu.backupNote"));
    row("menu-about", words.say("menu.about"), actions.about());
    back.getStyleClass().add("solid");
    root.addEventHandler(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ESCAPE) {
            actions.back().run();
            event.consume();
          }
        });
  }

  @Override
  public Pane root() {
    return root;
  }

  /** Gives the keyboard to the first row. */
  void focus() {
    back.requestFocus();
  }

  /** Shows what is chosen at present. */
  void show(UnitSystem chosenUnits, LightChoice chosenLight, SoundChoice chosenSound) {
    units.show(
        words.say("menu.units"),
        words.say(
            switch (chosenUnits) {
              case METRIC -> "menu.metric";
              case IMPERIAL -> "menu.imperial";
            }));
    light.show(words.say("menu.light"), words.say(chosenLight.key()));
    sound.show(words.say("menu.sound"), words.say(chosenSound.key()));
  }

  /** Says that the drive is being ended. */
  void showEnding(boolean isEnding) {
    end.setDisable(isEnding);
    end.show(words.say(isEnding ? "menu.ending" : "menu.end"), "");
  }

  private PressRow row(String id, String text, Runnable action) {
    PressRow row = new PressRow(text, action);
    row.setId(id);
    int column = rows / ROWS;
    row.place(
        ParkedGeometry.LEFT
            + column * (ParkedGeometry.MENU_COLUMN_WIDTH + ParkedGeometry.MENU_COLUMN_GAP),
        ParkedGeometry.MENU_TOP
            + rows % ROWS * (ParkedGeometry.MENU_ROW_HEIGHT + ParkedGeometry.MENU_ROW_GAP),
        ParkedGeometry.MENU_COLUMN_WIDTH,
        ParkedGeometry.MENU_ROW_HEIGHT);
    rows++;
    root.getChildren().add(row);
    return row;
  }
}
