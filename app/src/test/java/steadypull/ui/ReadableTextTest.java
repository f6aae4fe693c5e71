package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.geometry.BoundingBox;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.text.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.VehicleSensors;
import steadypull.store.TripDetails;
import steadypull.store.TripRecorder;
import steadypull.vehicle.role.RoleWords;

/** Nothing is cut off, nothing lies on anything else, nothing is too small: in every language. */
class ReadableTextTest {
  /** B612: height of capitals and ascenders, and depth of descenders, as shares of the size. */
  private static final double ASCENT = 0.78;

  private static final double DESCENT = 0.2;
  private static final double DRIVE_MINIMUM_PX = 20;
  private static final double PARKED_MINIMUM_PX = 16;
  private static final double ROUNDING = 0.5;

  @TempDir Path folder;

  static Stream<Arguments> readers() {
    return Stream.of(Locale.ENGLISH, Locale.GERMAN)
        .flatMap(
            locale -> Stream.of(UnitSystem.values()).map(units -> Arguments.of(locale, units)));
  }

  private record Placed(String text, Bounds bounds, double size) {}

  @ParameterizedTest
  @MethodSource("readers")
  void driveIsReadableInEveryState(Locale locale, UnitSystem units) {
    Map<String, DriveSnapshot> moments = new HashMap<>(Moments.all());
    moments.putAll(Moments.notices());
    for (Map.Entry<String, DriveSnapshot> moment : moments.entrySet()) {
      Words words = new Words(locale);
      DriveModel model =
          new DriveModel(
              words, new QuantityFormat(locale, units), ZoneOffset.UTC, System::nanoTime);
      DriveActions idle =
          new DriveActions(() -> {}, () -> {}, () -> {}, () -> {}, () -> {}, () -> {});
      List<Placed> texts =
          Fx.call(
              () -> {
                model.show(moment.getValue());
                return texts(new DriveScreen(words, model, idle, false));
              });
      String where = moment.getKey() + " " + locale + " " + units;
      assertReadable(where, texts, DRIVE_MINIMUM_PX);
      assertThat(texts).as(where).hasSizeGreaterThan(15);
    }
  }

  @ParameterizedTest
  @MethodSource("readers")
  void parkedScreensAreReadable(Locale locale, UnitSystem units) {
    Words words = new Words(locale);
    StartModel start = new StartModel(1);
    StartModel newcomer = new StartModel(12);
    Runnable nothing = () -> {};
    List<Screen> screens =
        Fx.call(
            () -> {
              start.found(
                  List.of("Wattle 2", "Quarry tipper"),
                  List.of(RecordingDesk.REAL, RecordingDesk.SIMULATED),
                  "");
              start.setStage(
                  new StartModel.Stage.Refused(
                      "Tried to open /dev/ttyS9, expected a free port, found it in use by another"
                          + " program. Close that program or choose another port."));
              newcomer.found(
                  List.of(), List.of(RecordingDesk.SIMULATED, RecordingDesk.REAL), "My rig");
              MenuScreen menu =
                  new MenuScreen(
                      words,
                      new MenuScreen.Actions(
                          nothing, nothing, nothing, nothing, nothing, nothing, nothing, nothing,
                          nothing, nothing, nothing));
              menu.show(units, LightChoice.BY_CLOCK, SoundChoice.SPOKEN);
              return List.of(
                  new StartScreen(words, start, nothing, nothing, nothing, nothing, nothing),
                  new StartScreen(words, newcomer, nothing, nothing, nothing, nothing, nothing),
                  menu,
                  sensors(words, units, SensorMoments.told()),
                  sensors(words, units, SensorMoments.puzzling()),
                  new CodesScreen(words, Moments.underboost(), nothing),
                  backup(words),
                  new AboutScreen(words, nothing));
            });
    for (Screen screen : screens) {
      String where = screen.getClass().getSimpleName() + " " + locale;
      assertReadable(where, Fx.call(() -> texts(screen)), PARKED_MINIMUM_PX);
    }
  }

  @ParameterizedTest
  @MethodSource("readers")
  void tripsAreReadableInEveryState(Locale locale, UnitSystem units) throws Exception {
    try (TripShelf shelf = new TripShelf(folder.resolve(locale + "-" + units))) {
      shelf.fill();
      shelf.keep("A tow vehicle with a name far too long", 3, TripDetails.ofLabel("x".repeat(99)));
      try (TripRecorder _ = shelf.begin("Quarry tipper", 4)) {
        for (TripMoments moment : TripMoments.values()) {
          List<Placed> texts =
              Fx.call(() -> texts(moment.screen(shelf.desk(), new Words(locale), units)));
          String where = moment + " " + locale + " " + units;
          assertReadable(where, texts, PARKED_MINIMUM_PX);
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("readers")
  void comparisonsAreReadableInEveryState(Locale locale, UnitSystem units) {
    for (CompareMoments moment : CompareMoments.values()) {
      List<Placed> texts = Fx.call(() -> texts(moment.screen(locale, units)));
      assertReadable(moment + " " + locale + " " + units, texts, PARKED_MINIMUM_PX);
    }
  }

  static BackupScreen backup(Words words) {
    BackupScreen screen = new BackupScreen(words, () -> {});
    screen.copy(new RecordingDesk());
    return screen;
  }

  static SensorsScreen sensors(Words words, UnitSystem units, VehicleSensors found) {
    SensorsModel model = new SensorsModel();
    model.set(new SensorsModel.State.Found(found));
    RoleWords roleWords = new RoleWords(words.locale(), new QuantityFormat(words.locale(), units));
    return new SensorsScreen(words, roleWords, "Wattle 2", model, _ -> {}, () -> {});
  }

  // The check itself must be able to fail.
  @Test
  void overlapIsSeen() {
    List<Placed> texts =
        List.of(
            new Placed("one", new BoundingBox(10, 10, 50, 20), 20),
            new Placed("two", new BoundingBox(40, 20, 50, 20), 20));
    assertThat(overlaps(texts)).containsExactly("\"one\" on \"two\"");
  }

  private static void assertReadable(String where, List<Placed> texts, double minimum) {
    for (Placed text : texts) {
      assertThat(text.bounds().getMinX()).as(where + text).isGreaterThanOrEqualTo(8);
      assertThat(text.bounds().getMaxX()).as(where + text).isLessThanOrEqualTo(1272);
      assertThat(text.bounds().getMinY()).as(where + text).isGreaterThanOrEqualTo(4);
      assertThat(text.bounds().getMaxY()).as(where + text).isLessThanOrEqualTo(796);
      assertThat(text.size()).as(where + text).isGreaterThanOrEqualTo(minimum - ROUNDING);
    }
    assertThat(overlaps(texts)).as(where).isEmpty();
  }

  private static List<String> overlaps(List<Placed> texts) {
    List<String> found = new ArrayList<>();
    for (int first = 0; first < texts.size(); first++) {
      for (int second = first + 1; second < texts.size(); second++) {
        if (texts.get(first).bounds().intersects(texts.get(second).bounds())) {
          found.add("\"" + texts.get(first).text() + "\" on \"" + texts.get(second).text() + "\"");
        }
      }
    }
    return found;
  }

  private static List<Placed> texts(Screen screen) {
    FittedPane root = new FittedPane();
    root.show(screen);
    new Scene(root);
    root.resize(DriveGeometry.WIDTH, DriveGeometry.HEIGHT);
    root.applyCss();
    root.layout();
    root.layout();
    List<Placed> placed = new ArrayList<>();
    for (Node node : Fx.visible(root)) {
      if (node instanceof Label label) {
        assertThat(label.lookup(".text"))
            .isInstanceOfSatisfying(
                Text.class, shown -> assertThat(shown.getText()).isEqualTo(label.getText()));
      }
      if (node instanceof Text text && !text.getText().isEmpty()) {
        Placed whole = place(text);
        seen(text, whole.bounds())
            .ifPresent(seen -> placed.add(new Placed(whole.text(), seen, whole.size())));
      }
    }
    return placed;
  }

  /** What is left of a text where lists that scroll cut it off; empty if nothing is. */
  private static Optional<Bounds> seen(Text text, Bounds inScene) {
    Bounds seen = inScene;
    for (Parent around = text.getParent(); around != null; around = around.getParent()) {
      if (around.getClip() != null) {
        Bounds window = around.localToScene(around.getClip().getBoundsInParent());
        double left = Math.max(seen.getMinX(), window.getMinX());
        double top = Math.max(seen.getMinY(), window.getMinY());
        double width = Math.min(seen.getMaxX(), window.getMaxX()) - left;
        double height = Math.min(seen.getMaxY(), window.getMaxY()) - top;
        if (width <= 0 || height <= 0) {
          return Optional.empty();
        }
        seen = new BoundingBox(left, top, width, height);
      }
    }
    return Optional.of(seen);
  }

  private static Placed place(Text text) {
    Bounds local = text.getLayoutBounds();
    double size = text.getFont().getSize();
    double middle = local.getMinY() + local.getHeight() / 2;
    double line = text.getFont().getSize() * (ASCENT + DESCENT);
    boolean isOneLine = local.getHeight() < 1.8 * size;
    double top = isOneLine ? text.getBaselineOffset() + local.getMinY() - ASCENT * size : middle;
    Bounds ink =
        isOneLine
            ? new BoundingBox(local.getMinX(), top, local.getWidth(), line)
            : new BoundingBox(
                local.getMinX(),
                local.getMinY() + 0.2 * size,
                local.getWidth(),
                local.getHeight() - 0.2 * size);
    double scale = text.getLocalToSceneTransform().getMxx();
    return new Placed(text.getText(), text.localToScene(ink), size * scale);
  }
}
