package steadypull.ui;

import javafx.scene.layout.Pane;

/**
 * Where a drive begins, in three steps from left to right: vehicle, adapter, cautions with one
 * large button. FX thread only.
 */
final class StartScreen implements Screen {
  private final Pane root;

  /**
   * Builds the screen.
   *
   * @param lookAgain looks for ports again
   * @param sensors opens the sensors of the chosen vehicle
   * @param trips opens the kept trips
   * @param compare compares kept trips before and after a change
   * @param begin begins the chosen drive
   */
  StartScreen(
      Words words,
      StartModel model,
      Runnable lookAgain,
      Runnable sensors,
      Runnable trips,
      Runnable compare,
      Runnable begin) {
    root = Parked.page(words.say("start.title"), subtitle(words, model));
    VehicleStep vehicle = new VehicleStep(words, model, sensors);
    PortStep port = new PortStep(words, model, lookAgain);
    BeforeStep before = new BeforeStep(words, model, begin);
    root.getChildren()
        .addAll(
            vehicle,
            port,
            before,
            way("trips", words.say("trips.title"), trips, ParkedGeometry.TRIPS_LEFT),
            way("compare", words.say("compare.title"), compare, ParkedGeometry.COMPARE_LEFT));
    model
        .factsProperty()
        .addListener(
            (_, _, facts) -> {
              vehicle.showFacts(facts);
              port.showFacts(facts);
            });
    model
        .choiceProperty()
        .addListener(
            (_, _, choice) -> {
              vehicle.showChoice(choice);
              port.showChoice(choice);
              before.show(choice, model.stageProperty().get());
            });
    model
        .stageProperty()
        .addListener((_, _, stage) -> before.show(model.choiceProperty().get(), stage));
    vehicle.showFacts(model.factsProperty().get());
    port.showFacts(model.factsProperty().get());
    before.show(model.choiceProperty().get(), model.stageProperty().get());
  }

  private static PressButton way(String id, String text, Runnable open, double left) {
    PressButton button = new PressButton(Icon.NONE, text, open);
    button.setId(id);
    button.place(
        left,
        ParkedGeometry.TRIPS_TOP,
        ParkedGeometry.RIGHT - ParkedGeometry.TRIPS_LEFT,
        ParkedGeometry.TRIPS_HEIGHT);
    return button;
  }

  private static String subtitle(Words words, StartModel model) {
    return switch (model.leftBehind()) {
      case 0 -> words.say("start.subtitle");
      case 1 -> words.say("start.leftBehind");
      default -> words.say("start.severalLeftBehind", String.valueOf(model.leftBehind()));
    };
  }

  @Override
  public Pane root() {
    return root;
  }
}
