package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
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
import steadypull.channel.UnitSystem;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.PortChoice;

/** What a person does on the screens, and what comes of it. */
class DriveStoryTest {
  private static final Instant NOON = Instant.parse("2026-01-17T12:00:00Z");

  @TempDir Path folder;

  private final RecordingDesk desk = new RecordingDesk();
  private final List<String> spoken = new ArrayList<>();
  private final AtomicLong nanos = new AtomicLong(1_000_000_000_000L);
  private Shell shell;

  private Shell newShell() {
    Shell made =
        new Shell(
            desk,
            new Words(Locale.ENGLISH),
            UnitSystem.METRIC,
            new Shell.Surroundings(
                ZoneOffset.UTC,
                InstantSource.fixed(NOON),
                nanos::get,
                Runnable::run,
                Runnable::run,
                Runnable::run,
                ScreenSettings.in(folder.resolve("screen.properties")),
                new NoComparisons(),
                (level, volume, words) -> spoken.add(level.word() + " " + volume + " " + words)));
    new Scene(made.root());
    return made;
  }

  @BeforeEach
  void open() {
    shell = Fx.call(this::newShell);
    Fx.run(shell::showStart);
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

  private void press(String id) {
    Node node = find(id).orElseThrow();
    Fx.run(() -> ((Button) node).fire());
    Fx.settle();
  }

  private void type(KeyCode key) {
    Fx.run(
        () -> {
          Node target = shell.root().getChildren().getFirst();
          KeyEvent event =
              new KeyEvent(KeyEvent.KEY_PRESSED, "", "", key, false, false, false, false);
          javafx.event.Event.fireEvent(target, event);
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

  @Test
  void oneTouchDrivesTheLastVehicleOnTheFirstRealPort() {
    press("drive");
    assertThat(desk.calls).containsExactly("open /dev/ttyS9 with Wattle 2");
    assertThat(find("mark")).isPresent();
  }

  @Test
  void knownVehicleIsChosenInItsListAndNotTypedOnceMore() {
    assertThat(((TextField) find("new-vehicle").orElseThrow()).getText()).isEmpty();
    assertThat(texts()).containsOnlyOnce("Wattle 2").contains("Wattle 2 over Serial port 9");
  }

  @Test
  void typedNameIsDrivenInsteadOfTheChosenOne() {
    Fx.run(() -> ((TextField) find("new-vehicle").orElseThrow()).setText("Red hauler"));
    press("drive");
    assertThat(desk.calls).containsExactly("open /dev/ttyS9 with Red hauler");
  }

  @Test
  void simulatedPortSaysSo() {
    assertThat(texts()).contains("simulated", "an invented tow");
  }

  @Test
  void driveCannotBeginWithoutAPort() {
    desk.offered = List.of();
    shell = Fx.call(this::newShell);
    Fx.run(shell::showStart);
    assertThat(find("drive").orElseThrow().isDisabled()).isTrue();
    assertThat(texts()).contains("No adapter found", "Choose an adapter to drive.");
  }

  // Somebody who has no adapter yet must be able to see what it does with one touch.
  @Test
  void withoutAnAdapterTheSimulatedDriveIsReadyAndSaysSo() {
    PortChoice onBoard = new PortChoice("/dev/ttyS0", "ttyS0", "ttyS0", false);
    desk.offered = List.of(RecordingDesk.SIMULATED, onBoard);
    desk.vehicles = List.of();
    shell = Fx.call(this::newShell);
    Fx.run(shell::showStart);
    assertThat(texts())
        .contains(
            "No adapter found",
            "Simulated: Long hot grade",
            "Built-in ports, seldom an adapter",
            "It is listed here after its first drive.");
    press("drive");
    assertThat(desk.calls).hasSize(1).first().asString().startsWith("open demo:long-hot-grade");
  }

  @Test
  void vehicleWithoutANameCannotBeDrivenOnARealPort() {
    TextField name = (TextField) find("new-vehicle").orElseThrow();
    Fx.run(() -> name.setText("Red hauler"));
    assertThat(texts()).contains("Red hauler over Serial port 9");
    Fx.run(name::clear);
    assertThat(find("drive").orElseThrow().isDisabled()).isTrue();
    assertThat(texts()).contains("Name the vehicle to drive.");
  }

  @Test
  void refusedPortShowsItsMessageInPlaceAndCanBeTriedAgain() {
    desk.refusal =
        "Tried /dev/ttyS9, expected to open it, found it in use. Close the other program.";
    press("drive");
    assertThat(texts()).contains(desk.refusal);
    desk.refusal = "";
    press("drive");
    assertThat(find("mark")).isPresent();
  }

  @Test
  void everyButtonOfTheDriveReachesTheControls() {
    drive();
    press("mark");
    show(Moments.advise(new AdviceLine.Response.None()));
    press("got-it");
    press("snooze");
    show(Moments.advise(new AdviceLine.Response.Snoozed(Moments.NOW + 9_000_000)));
    press("show");
    assertThat(desk.calls)
        .containsExactly("open /dev/ttyS9 with Wattle 2", "mark", "acknowledge", "snooze", "show");
  }

  @Test
  void everyKeyOfTheDriveReachesTheControls() {
    drive();
    for (KeyCode key : List.of(KeyCode.M, KeyCode.G, KeyCode.S, KeyCode.V)) {
      type(key);
    }
    assertThat(desk.calls)
        .containsExactly("open /dev/ttyS9 with Wattle 2", "mark", "acknowledge", "snooze", "show");
  }

  @Test
  void actNowOffersNoSnooze() {
    drive();
    show(Moments.actNow(new AdviceLine.Response.None()));
    assertThat(find("got-it")).isPresent();
    assertThat(find("snooze")).isEmpty();
  }

  @Test
  void lightButtonGoesToNightAndBack() {
    drive();
    press("light");
    assertThat(shell.root().getStyleClass()).contains("night").doesNotContain("day");
    assertThat(texts()).contains("Day");
    press("light");
    assertThat(shell.root().getStyleClass()).contains("day").doesNotContain("night");
  }

  @Test
  void chosenLightIsStillThereAfterARestart() {
    drive();
    press("light");
    shell = Fx.call(this::newShell);
    assertThat(shell.root().getStyleClass()).contains("night");
  }

  @Test
  void damagedSettingsAreLeftAndTheClockDecides() throws IOException {
    Files.writeString(folder.resolve("screen.properties"), "light=\\u00zz");
    shell = Fx.call(this::newShell);
    assertThat(shell.root().getStyleClass()).contains("day");
  }

  @Test
  void clockBringsTheNightByItself() {
    drive();
    DriveSnapshot calm = Moments.calm();
    show(
        new DriveSnapshot(
            calm.timeMicros(),
            Instant.parse("2026-01-17T19:00:00Z"),
            calm.vehicle(),
            calm.demo(),
            calm.recording(),
            calm.link(),
            calm.advice(),
            calm.adviceSinceMicros(),
            calm.snoozeSeconds(),
            calm.strips(),
            calm.road(),
            calm.diagnosis(),
            calm.tablet()));
    assertThat(shell.root().getStyleClass()).contains("night");
  }

  @Test
  void menuOpensByButtonAndClosesByEscape() {
    drive();
    press("menu");
    assertThat(find("menu-back")).isPresent();
    type(KeyCode.ESCAPE);
    assertThat(find("mark")).isPresent();
    type(KeyCode.ESCAPE);
    assertThat(find("menu-back")).isPresent();
  }

  @Test
  void unitsChangeWhileDriving() {
    drive();
    assertThat(texts()).contains("km/h", "88");
    press("menu");
    press("menu-units");
    press("menu-back");
    assertThat(texts()).contains("mph", "190").doesNotContain("km/h");
  }

  /** A speed said in other units than the speed that is shown would mislead the driver. */
  @Test
  void adviceIsAskedForInTheUnitsThatAreShown() {
    drive();
    assertThat(desk.spoken).containsExactly(UnitSystem.METRIC);
    press("menu");
    press("menu-units");
    assertThat(desk.spoken).containsExactly(UnitSystem.METRIC, UnitSystem.IMPERIAL);
  }

  @Test
  void whatAsksForAnAnswerIsSaidAloudOnceAndAWarningAtOnce() {
    drive();
    show(Moments.mayReach());
    assertThat(spoken).isEmpty();
    show(Moments.advise(new AdviceLine.Response.None()));
    show(Moments.advise(new AdviceLine.Response.None()));
    assertThat(spoken).containsExactly("caution 0.8 Let speed fall to 80");
    show(Moments.actNow(new AdviceLine.Response.None()));
    assertThat(spoken).hasSize(2).last().asString().startsWith("warning 1.0 ");
  }

  @Test
  void soundThatIsTurnedDownIsKeptAndNeverMutesAWarning() {
    drive();
    press("menu");
    press("menu-sound");
    press("menu-sound");
    press("menu-sound");
    assertThat(texts()).contains("warnings only, quietly: they are never off");
    show(Moments.advise(new AdviceLine.Response.None()));
    assertThat(spoken).isEmpty();
    show(Moments.actNow(new AdviceLine.Response.None()));
    assertThat(spoken).containsExactly("warning 0.5 ");
    ScreenSettings kept = ScreenSettings.in(folder.resolve("screen.properties"));
    kept.keep(LightChoice.NIGHT);
    assertThat(kept.sound()).isEqualTo(SoundChoice.WARNINGS);
    assertThat(kept.light()).isEqualTo(LightChoice.NIGHT);
  }

  @Test
  void endingTheDriveSealsTheTripAndReturnsToTheStart() {
    drive();
    press("menu");
    press("menu-end");
    assertThat(desk.calls).endsWith("close");
    assertThat(find("drive")).isPresent();
  }

  @Test
  void theMenuShowsTheCodesThatTheVehicleTold() {
    drive();
    show(Moments.codeStored());
    press("menu");
    press("menu-codes");
    assertThat(texts()).anyMatch(text -> text.startsWith("P0299, turbocharger A underboost"));
    press("codes-back");
    assertThat(find("menu-end")).isPresent();
  }

  @Test
  void aBackupIsMadeWhileDrivingAndSaysWhereItLies() {
    drive();
    press("menu");
    press("menu-backup");
    assertThat(desk.calls).endsWith("back up");
    assertThat(texts())
        .contains("Copied. Trips in the copy: 3. It lies here:")
        .anyMatch(text -> text.endsWith("a.backup"));
    press("backup-back");
    assertThat(find("menu-end")).isPresent();
  }

  @Test
  void aBackupThatCannotBeMadeSaysWhy() {
    drive();
    desk.refusal = "Could not copy the library: expected room, found none. Free some.";
    press("menu");
    press("menu-backup");
    assertThat(texts()).contains(desk.refusal).doesNotContain("Copying the library.");
  }

  @Test
  void aboutReturnsToTheMenu() {
    drive();
    press("menu");
    press("menu-about");
    assertThat(texts()).anyMatch(text -> text.startsWith("Steadypull only reads."));
    press("about-back");
    assertThat(find("menu-end")).isPresent();
  }

  // A driver must not miss a warning because a passenger has the menu open.
  @Test
  void newAdviceBringsTheDriveBackFromTheMenuOnce() {
    drive();
    press("menu");
    show(Moments.advise(new AdviceLine.Response.None()));
    assertThat(find("got-it")).isPresent();
    press("menu");
    show(Moments.advise(new AdviceLine.Response.None()));
    assertThat(find("menu-back")).isPresent();
    show(Moments.actNow(new AdviceLine.Response.None()));
    assertThat(find("got-it")).isPresent();
  }

  @Test
  void closingTheWindowEndsTheDriveFirst() {
    drive();
    Fx.run(() -> shell.leave(() -> desk.calls.add("gone")));
    Fx.settle();
    assertThat(desk.calls).endsWith("close", "gone");
  }

  @Test
  void everyTargetIsAtLeast84PixelsEachWay() {
    drive();
    show(Moments.advise(new AdviceLine.Response.None()));
    assertTargets();
    press("menu");
    assertTargets();
    press("menu-end");
    assertTargets();
  }

  private void assertTargets() {
    find("anything");
    Fx.run(
        () ->
            Fx.visible(shell.root()).stream()
                .filter(node -> node instanceof Button || node instanceof ChoiceRow)
                .forEach(
                    node -> {
                      assertThat(node.getLayoutBounds().getWidth())
                          .as(node.getId())
                          .isGreaterThanOrEqualTo(84);
                      assertThat(node.getLayoutBounds().getHeight())
                          .as(node.getId())
                          .isGreaterThanOrEqualTo(84);
                      assertThat(node.getAccessibleText()).as(node.getId()).isNotBlank();
                    }));
  }
}
