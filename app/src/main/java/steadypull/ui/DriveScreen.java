package steadypull.ui;

import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;
import javafx.scene.text.Text;

/**
 * The screen of a drive: header, advice line, strips and road over one time axis, and the rail. Its
 * root is 1280 x 800 and is scaled as a whole. FX thread only.
 */
final class DriveScreen implements Screen {
  private final Pane root = new Pane();
  private final PlotView plot = new PlotView();
  private final RailView rail;
  private final DriveActions actions;

  /**
   * Builds the screen over its model.
   *
   * @param moves whether strips may slide and fills may fade
   */
  DriveScreen(Words words, DriveModel model, DriveActions actions, boolean moves) {
    this.actions = actions;
    this.rail = new RailView(words, actions);
    HeaderView header = new HeaderView();
    AdviceView advice = new AdviceView(words, actions, moves);
    StripsView strips = new StripsView(words, plot, moves);
    RoadView road = new RoadView(words);
    root.getChildren().addAll(plot, axis(words), header, strips, road, advice, rail);
    root.setPrefSize(DriveGeometry.WIDTH, DriveGeometry.HEIGHT);
    root.addEventHandler(KeyEvent.KEY_PRESSED, this::onKey);
    follow(model.headerProperty(), header::show);
    follow(model.adviceProperty(), advice::show);
    follow(model.stripsProperty(), strips::show);
    follow(model.roadProperty(), road::show);
    follow(model.stripsProperty(), strip -> road.keepClear(strip.secondsToCrossing()));
    follow(model.roadProperty(), plot::showRoad);
  }

  /** For a drive that is not recorded: nothing can be marked. */
  DriveScreen withoutMark() {
    rail.withoutMark();
    return this;
  }

  @Override
  public Pane root() {
    return root;
  }

  @Override
  public void setDensity(double density) {
    plot.setDensity(density);
  }

  @Override
  public void setLight(Light light) {
    plot.setLight(light);
    rail.setLight(light);
  }

  private static <T> void follow(ReadOnlyObjectProperty<Optional<T>> property, Consumer<T> view) {
    property.get().ifPresent(view);
    property.addListener((_, _, changed) -> changed.ifPresent(view));
  }

  private void onKey(KeyEvent event) {
    Optional<Runnable> action = action(event.getCode());
    action.ifPresent(Runnable::run);
    if (action.isPresent()) {
      event.consume();
    }
  }

  private Optional<Runnable> action(KeyCode key) {
    return switch (key) {
      case M -> Optional.of(rail::pressMark);
      case G -> Optional.of(actions.gotIt());
      case S -> Optional.of(actions.snooze());
      case V -> Optional.of(actions.show());
      case N -> Optional.of(actions.light());
      case ESCAPE -> Optional.of(actions.menu());
      default -> Optional.empty();
    };
  }

  private static Pane axis(Words words) {
    Pane axis = new Pane();
    axis.setManaged(false);
    label(axis, words.say("axis.past"), TextRow.Anchor.LEFT, DriveGeometry.CHART_LEFT, "hint");
    double minute = DriveGeometry.MINUTE;
    label(
        axis, words.say("axis.minute"), TextRow.Anchor.CENTRE, DriveGeometry.NOW - minute, "hint");
    label(axis, words.say("axis.now"), TextRow.Anchor.CENTRE, DriveGeometry.NOW, "bold");
    label(
        axis, words.say("axis.minute"), TextRow.Anchor.CENTRE, DriveGeometry.NOW + minute, "hint");
    label(axis, words.say("axis.ahead"), TextRow.Anchor.RIGHT, DriveGeometry.CHART_RIGHT, "hint");
    return axis;
  }

  private static void label(
      Pane axis, String words, TextRow.Anchor anchor, double x, String style) {
    Text text = TextRow.text(style);
    text.setText(words);
    axis.getChildren().add(new TextRow(anchor).add(text, 0).at(x, DriveGeometry.AXIS_BASELINE));
  }
}
