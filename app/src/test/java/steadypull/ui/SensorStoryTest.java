package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import javafx.event.Event;
import javafx.event.EventTarget;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.text.Text;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.advice.AdviceLine;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.DriveSnapshot;
import steadypull.vehicle.SignalSource;
import steadypull.vehicle.Vehicle;

/** What a person is told of where the sensors sit, and what comes of confirming it. */
class SensorStoryTest {
  @TempDir Path folder;

  private final RecordingDesk desk = new RecordingDesk();
  private final AtomicLong nanos = new AtomicLong(1_000_000_000_000L);
  private Shell shell;

  @BeforeEach
  void open() {
    shell =
        Fx.call(
            () -> {
              Shell made =
                  new Shell(
                      desk,
                      new Words(Locale.ENGLISH),
                      UnitSystem.METRIC,
                      new Shell.Surroundings(
                          ZoneOffset.UTC,
                          InstantSource.fixed(Instant.parse("2026-01-17T12:00:00Z")),
                          nanos::get,
                          Runnable::run,
                          Runnable::run,
                          Runnable::run,
                          ScreenSettings.in(folder.resolve("screen.properties")),
                          new NoComparisons(),
                          Voice.SILENT));
              new Scene(made.root());
              return made;
            });
    Fx.run(shell::showStart);
  }

  @Test
  void theSensorsOfTheChosenVehicleOpenFromTheStart() {
    press("sensors");

    assertThat(desk.calls).containsExactly("sensors of Wattle 2");
    assertThat(texts())
        .contains("Charge air before cooler", "compressor outlet sensor A (01.75.2), clear")
        .anyMatch(text -> text.contains("169°") && text.contains("228 kPa"));
    press("sensors-back");
    assertThat(find("drive")).isPresent();
  }

  @Test
  void aVehicleThatWasNeverDrivenHasNoSensorsToShow() {
    assertThat(find("sensors")).isPresent();
    Fx.run(() -> ((TextField) find("new-vehicle").orElseThrow()).setText("Red hauler"));
    assertThat(find("sensors")).isEmpty();
  }

  @Test
  void aPlaceIsConfirmedByItselfAndThenSaysSo() {
    press("sensors");
    assertThat(texts()).containsOnlyOnce("confirmed");
    press("confirm-charge_air_temp_in");

    assertThat(desk.calls).endsWith("confirm charge_air_temp_in 01.75.2");
    assertThat(find("confirm-charge_air_temp_in")).isEmpty();
    assertThat(texts()).filteredOn("confirmed"::equals).hasSize(2);
  }

  @Test
  void oneTouchConfirmsAllThatIsStillOpenAndNoMore() {
    press("sensors");
    press("confirm-all");

    assertThat(desk.calls)
        .containsExactly(
            "sensors of Wattle 2",
            "confirm charge_coolant_temp 01.67.2",
            "confirm charge_air_temp_in 01.75.2",
            "confirm exhaust_temp_before_turbine 01.78.1",
            "confirm exhaust_temp_after_turbine 01.78.2");
    assertThat(find("confirm-all")).isEmpty();
  }

  @Test
  void whatCannotBeToldSaysWhatIsMissingAndOffersNoButton() {
    desk.sensors = SensorMoments.puzzling();
    press("sensors");

    assertThat(texts())
        .anyMatch(text -> text.contains("a minute of boost above 180 kPa; 12 s"))
        .anyMatch(text -> text.startsWith("Charge air sensor 1 (01.77.1) stands still at 90°"));
    assertThat(find("confirm-charge_air_temp_out")).isEmpty();
    assertThat(find("confirm-charge_air_temp_in")).isPresent();
  }

  @Test
  void aLibraryThatRefusesIsTold() {
    desk.refusal = "Could not read the library. Free the disk.";
    press("sensors");

    assertThat(texts()).contains(desk.refusal);
    assertThat(find("confirm-all")).isEmpty();
  }

  @Test
  void theMenuOfADriveLeadsToTheSensorsAndBack() {
    drive();
    press("menu");
    press("menu-sensors");
    assertThat(desk.calls).endsWith("sensors of Wattle 2");
    press("sensors-back");
    assertThat(find("menu-end")).isPresent();
  }

  /** Back is where one came from, by button and by key, also after something was confirmed. */
  @Test
  void whoCameFromTheMenuIsLedBackToTheMenuAndFromThereToTheDrive() {
    drive();
    press("menu");
    press("menu-sensors");
    press("confirm-all");
    assertThat(find("confirm-all")).isEmpty();
    type(KeyCode.ESCAPE);
    assertThat(find("menu-end")).isPresent();
    assertThat(find("mark")).isEmpty();
    type(KeyCode.ESCAPE);
    assertThat(find("mark")).isPresent();
  }

  @Test
  void whoCameFromTheStartIsLedBackToTheStartByKeyToo() {
    press("sensors");
    press("confirm-all");
    type(KeyCode.ESCAPE);
    assertThat(find("drive")).isPresent();
  }

  // A driver must not miss a warning because a passenger reads about sensors.
  @Test
  void newAdviceBringsTheDriveBackFromTheSensors() {
    drive();
    press("menu");
    press("menu-sensors");
    show(Moments.advise(new AdviceLine.Response.None()));
    assertThat(find("got-it")).isPresent();
  }

  /** Quietly, at the beginning, and never where somebody has confirmed or nobody drives. */
  @Test
  void theHeaderSaysOnceThatPlacesAreAssumed() {
    String hint = "sensor places assumed, see Menu";
    DriveSnapshot early = at(30_000_000, Moments.calm().vehicle(), false);
    Vehicle confirmed =
        early
            .vehicle()
            .withSources(
                early.assumedPlaces().stream()
                    .map(channel -> new SignalSource(channel.id(), "01.77.1"))
                    .toList());

    assertThat(early.assumedPlaces()).isNotEmpty();
    assertThat(note(early)).isEqualTo(hint);
    assertThat(note(at(90_000_000, early.vehicle(), false))).doesNotContain(hint);
    assertThat(note(at(30_000_000, early.vehicle(), true))).doesNotContain(hint);
    assertThat(note(at(30_000_000, confirmed, false))).doesNotContain(hint);
  }

  @Test
  void everyTargetIsAtLeast84PixelsEachWay() {
    press("sensors");
    find("anything");
    Fx.run(
        () ->
            Fx.visible(shell.root()).stream()
                .filter(Button.class::isInstance)
                .forEach(
                    node -> {
                      assertThat(node.getLayoutBounds().getWidth()).isGreaterThanOrEqualTo(84);
                      assertThat(node.getLayoutBounds().getHeight()).isGreaterThanOrEqualTo(84);
                      assertThat(node.getAccessibleText()).as(node.getId()).isNotBlank();
                    }));
  }

  private static String note(DriveSnapshot snapshot) {
    return new HeaderWords(
            new Words(Locale.ENGLISH),
            new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC),
            ZoneOffset.UTC)
        .face(snapshot)
        .note();
  }

  private static DriveSnapshot at(long timeMicros, Vehicle vehicle, boolean demo) {
    DriveSnapshot calm = Moments.calm();
    return new DriveSnapshot(
        timeMicros,
        calm.clock(),
        vehicle,
        demo,
        calm.recording(),
        calm.link(),
        calm.advice(),
        0,
        calm.snoozeSeconds(),
        calm.strips(),
        calm.road(),
        calm.diagnosis(),
        calm.tablet());
  }

  private void drive() {
    press("drive");
    show(Moments.calm());
  }

  private void show(DriveSnapshot snapshot) {
    nanos.addAndGet(1_000_000_000L);
    desk.onSnapshot.accept(snapshot);
    Fx.settle();
  }

  private Optional<Node> find(String id) {
    return Fx.call(
        () -> {
          shell.root().applyCss();
          shell.root().layout();
          return Optional.ofNullable(shell.root().lookup("#" + id)).filter(Node::isVisible);
        });
  }

  /** A key goes to whoever has the focus, and to nobody's screen if nobody has it. */
  private void type(KeyCode key) {
    Fx.run(
        () -> {
          Scene scene = shell.root().getScene();
          EventTarget target = scene.getFocusOwner() == null ? scene : scene.getFocusOwner();
          Event.fireEvent(
              target, new KeyEvent(KeyEvent.KEY_PRESSED, "", "", key, false, false, false, false));
        });
    Fx.settle();
  }

  private void press(String id) {
    Node node = find(id).orElseThrow();
    Fx.run(
        () -> {
          node.requestFocus();
          ((Button) node).fire();
        });
    Fx.settle();
  }

  private List<String> texts() {
    return Fx.call(
        () -> {
          shell.root().applyCss();
          shell.root().layout();
          return Fx.visible(shell.root()).stream()
              .filter(Text.class::isInstance)
              .map(node -> ((Text) node).getText())
              .toList();
        });
  }
}
