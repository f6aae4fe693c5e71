package steadypull.ui;

import atlantafx.base.theme.PrimerLight;
import java.util.Objects;
import java.util.Optional;
import javafx.application.Application;
import javafx.scene.layout.Pane;
import javafx.scene.transform.Scale;

/** Holds one screen and scales it to the window, keeping its shape; the ground fills the rest. */
final class FittedPane extends Pane {
  private final Scale scale = new Scale();
  private Optional<Screen> screen = Optional.empty();
  private Light light = Light.DAY;

  FittedPane() {
    Typeface.load();
    useBaseTheme();
    getStylesheets().addAll(sheet("tokens.css"), sheet("screens.css"));
    setPrefSize(DriveGeometry.WIDTH, DriveGeometry.HEIGHT);
    setLight(Light.DAY);
  }

  /** Shows another screen. */
  void show(Screen changed) {
    leaving();
    screen.ifPresent(before -> before.root().getTransforms().remove(scale));
    screen = Optional.of(changed);
    changed.root().getTransforms().add(scale);
    changed.setLight(light);
    getChildren().setAll(changed.root());
    changed.root().requestFocus();
  }

  /** Lets the screen that is shown keep what was begun on it. */
  void leaving() {
    screen.ifPresent(Screen::leaving);
  }

  /** Changes the colours. */
  void setLight(Light changed) {
    light = changed;
    getStyleClass().setAll("root", "steadypull", changed.styleClass());
    screen.ifPresent(shown -> shown.setLight(changed));
  }

  /** The colours that are on. */
  Light light() {
    return light;
  }

  @Override
  protected void layoutChildren() {
    double share = Math.min(getWidth() / DriveGeometry.WIDTH, getHeight() / DriveGeometry.HEIGHT);
    scale.setX(share);
    scale.setY(share);
    screen.ifPresent(
        shown -> {
          shown.root().resize(DriveGeometry.WIDTH, DriveGeometry.HEIGHT);
          shown.root().setLayoutX((getWidth() - share * DriveGeometry.WIDTH) / 2);
          shown.root().setLayoutY((getHeight() - share * DriveGeometry.HEIGHT) / 2);
          shown.setDensity(share);
        });
  }

  /**
   * What our own sheets leave open, such as scroll bars and text cursors, follows the base theme.
   */
  private static void useBaseTheme() {
    String theme = new PrimerLight().getUserAgentStylesheet();
    if (!theme.equals(Application.getUserAgentStylesheet())) {
      Application.setUserAgentStylesheet(theme);
    }
  }

  private static String sheet(String name) {
    return Objects.requireNonNull(FittedPane.class.getResource(name)).toExternalForm();
  }
}
