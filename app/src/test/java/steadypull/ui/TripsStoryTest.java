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
import javafx.event.ActionEvent;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ListView;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.text.Text;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.UnitSystem;
import steadypull.store.NewTrip;
import steadypull.store.TripDetails;
import steadypull.store.TripRecorder;
import steadypull.store.TripSummary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** What a person does with kept trips at the window, and what the library holds then. */
class TripsStoryTest {
  @TempDir Path folder;

  private final RecordingDesk desk = new RecordingDesk();
  private final AtomicLong nanos = new AtomicLong(1_000_000_000_000L);
  private TripShelf shelf;
  private Shell shell;

  @BeforeEach
  void open() throws Exception {
    shelf = new TripShelf(folder.resolve("library"));
    desk.trips = shelf.desk();
    shell = Fx.call(this::newShell);
    Fx.run(shell::showStart);
  }

  @AfterEach
  void close() {
    shelf.close();
  }

  private Shell newShell() {
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
  }

  private Optional<Node> find(String id) {
    return Fx.call(
        () -> {
          shell.root().applyCss();
          shell.root().layout();
          return Fx.visible(shell.root()).stream()
              .filter(node -> id.equals(node.getId()))
              .findFirst();
        });
  }

  private void press(String id) {
    Node node = find(id).orElseThrow();
    Fx.run(() -> ((Button) node).fire());
    Fx.settle();
  }

  private void pressRow(String words) {
    Node row =
        Fx.call(
            () ->
                Fx.visible(shell.root()).stream()
                    .filter(ButtonBase.class::isInstance)
                    .filter(node -> words.equals(node.getAccessibleText()))
                    .findFirst()
                    .orElseThrow());
    Fx.run(() -> ((ButtonBase) row).fire());
    Fx.settle();
  }

  private void type(String id, String text) {
    TextInputControl field = (TextInputControl) find(id).orElseThrow();
    Fx.run(
        () -> {
          field.setText(text);
          field.fireEvent(new ActionEvent());
        });
    Fx.settle();
  }

  private void key(KeyCode key) {
    Fx.run(
        () ->
            Event.fireEvent(
                shell.root().getChildren().getFirst(),
                new KeyEvent(KeyEvent.KEY_PRESSED, "", "", key, false, false, false, false)));
    Fx.settle();
  }

  private void keyAt(String id, KeyCode key) {
    Node node = find(id).orElseThrow();
    Fx.run(
        () ->
            Event.fireEvent(
                node, new KeyEvent(KeyEvent.KEY_PRESSED, "", "", key, false, false, false, false)));
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

  @SuppressWarnings("unchecked")
  private List<String> listed() {
    ListView<TripSummary> list = (ListView<TripSummary>) find("trips-list").orElseThrow();
    return list.getItems().stream().map(TripSummary::vehicleName).toList();
  }

  private boolean isOffered(String id) {
    return !find(id).orElseThrow().isDisabled();
  }

  private TripSummary newest() throws Exception {
    return shelf.library.trips(Optional.empty()).getFirst();
  }

  @Test
  void startLeadsToTheComparisonOfTripsAndBack() {
    press("compare");
    assertThat(find("compare-runs")).isPresent();

    press("compare-menu");
    assertThat(find("trips")).isPresent();
  }

  @Test
  void theStartLeadsToTheTripsAndTheNewestLiesOpen() throws Exception {
    shelf.fill();
    press("trips");

    assertThat(listed()).containsExactly("Wattle 2", "Quarry tipper", "Wattle 2");
    assertThat(texts())
        .contains(
            "3 in all, newest first",
            "19 Jan 2026, 13:02",
            "Monday 19 January 2026, 13:02",
            "Wattle 2, 0:10:00, 12.0 km",
            "Least headroom 12° under: Coolant",
            "13:02 to 13:12",
            "second charge cooler",
            "35 °C, gusty headwind");
    press("trips-back");
    assertThat(find("drive")).isPresent();
  }

  @Test
  void anEmptyLibraryAndASearchWithoutHitsSayWhatToDo() throws Exception {
    press("trips");
    assertThat(texts()).anyMatch(text -> text.startsWith("No trip yet."));
    assertThat(isOffered("trips-throw-away")).isFalse();
    press("trips-back");
    shelf.fill();
    press("trips");
    type("trips-search", "zebra");
    assertThat(texts()).contains("0 of 3").anyMatch(text -> text.startsWith("No trip fits."));
    type("trips-search", "fan ROAR");
    assertThat(listed()).containsExactly("Quarry tipper");
  }

  @Test
  void oneVehicleAndOneTagAreChosenFromLists() throws Exception {
    shelf.fill();
    press("trips");
    press("trips-vehicle");
    pressRow("Quarry tipper");
    assertThat(listed()).containsExactly("Quarry tipper");
    press("trips-vehicle");
    pressRow("all vehicles");
    press("trips-tag");
    pressRow("north ramp");
    assertThat(listed()).containsExactly("Wattle 2");
    assertThat(texts()).contains("1 of 3", "north ramp");
    press("trips-tag");
    key(KeyCode.ESCAPE);
    assertThat(find("trips-list")).isPresent();
  }

  @Test
  void whatIsTypedIsKeptAtOnceAndSaid() throws Exception {
    shelf.fill();
    press("trips");
    press("trips-edit");
    type("trip-label", "third");
    assertThat(newest().label()).isEqualTo("third");
    assertThat(texts()).contains("Kept: Label");
    type("trip-tags", "hot, gravel");
    assertThat(texts()).contains("Kept: Tags");
    type("trip-mass", "7800");
    type("trip-trailer", "3200");
    type("trip-outsideTemp", "hot");
    press("trips-edit");

    assertThat(newest().details().tags()).containsExactly("hot", "gravel");
    assertThat(newest().details().outsideCelsius()).hasValue(34.5);
    assertThat(shelf.library.vehicleOf(newest().id()).rig().vehicleMassKilograms()).hasValue(4600);
    assertThat(texts())
        .contains("7.8 t in all, trailer 3.2 t")
        .anyMatch(text -> text.startsWith("Not kept: Outside from"));
  }

  @Test
  void aFieldThatIsLeftIsKept() throws Exception {
    shelf.fill();
    press("trips");
    press("trips-edit");
    Stage stage =
        Fx.call(
            () -> {
              Stage shown = new Stage();
              shown.setScene(shell.root().getScene());
              shown.show();
              shown.requestFocus();
              return shown;
            });
    TextInputControl note = (TextInputControl) find("trip-note").orElseThrow();
    Fx.run(note::requestFocus);
    Fx.run(() -> note.setText("left"));
    Fx.run(find("trip-fitted").orElseThrow()::requestFocus);
    Fx.settle();
    Fx.run(stage::hide);
    assertThat(newest().details().note()).isEqualTo("left");
  }

  @Test
  void theSheetStaysWhileSomebodyTypesThoughItsTripNoLongerFitsTheSearch() throws Exception {
    shelf.fill();
    press("trips");
    type("trips-search", "baseline");
    press("trips-edit");
    type("trip-label", "first");
    assertThat(listed()).isEmpty();
    assertThat(((TextInputControl) find("trip-label").orElseThrow()).getText()).isEqualTo("first");
  }

  /** The window's own button must not lose the last field. */
  @Test
  void closingTheWindowKeepsWhatWasBeingTyped() throws Exception {
    shelf.fill();
    press("trips");
    press("trips-edit");
    Node note = find("trip-note").orElseThrow();
    Fx.run(() -> ((TextInputControl) note).setText("last"));
    Fx.run(() -> shell.leave(() -> {}));
    assertThat(newest().details().note()).isEqualTo("last");
  }

  @Test
  void leavingTheScreenKeepsWhatWasBeingTyped() throws Exception {
    shelf.fill();
    press("trips");
    press("trips-edit");
    type("trip-note", "One.\nTwo.");
    press("trips-back");
    assertThat(newest().details().note()).isEqualTo("One.\nTwo.");
  }

  @Test
  void whatIsThrownAwayComesBackByTheBar() throws Exception {
    shelf.fill();
    press("trips");
    assertThat(isOffered("trips-thrown-away")).isFalse();
    press("trips-throw-away");

    assertThat(listed()).containsExactly("Quarry tipper", "Wattle 2");
    assertThat(texts())
        .contains("Trip of 19 Jan 2026, 13:02", "thrown away", "Sunday 18 January 2026, 13:02");
    press("trips-bring-back");
    assertThat(listed()).hasSize(3);
    assertThat(find("trips-bring-back")).isEmpty();
    assertThat(texts()).contains("Monday 19 January 2026, 13:02");
  }

  @Test
  void allThatWasThrownAwayIsListedUntilTheLibraryIsClosed() throws Exception {
    shelf.fill();
    press("trips");
    key(KeyCode.DELETE);
    key(KeyCode.DELETE);
    press("trips-back");
    press("trips");
    assertThat(find("trips-bring-back")).isEmpty();
    assertThat(isOffered("trips-thrown-away")).isTrue();
    press("trips-thrown-away");
    pressRow("Bring back 19 Jan 2026, 13:02, Wattle 2, 0:10:00, 12.0 km");
    assertThat(listed()).containsExactly("Wattle 2", "Wattle 2");

    shelf.close();
    shelf = new TripShelf(folder.resolve("library"));
    desk.trips = shelf.desk();
    press("trips-back");
    press("trips");
    assertThat(listed()).containsExactly("Wattle 2", "Wattle 2");
    assertThat(isOffered("trips-thrown-away")).isFalse();
  }

  @Test
  void aTripThatIsBeingRecordedStaysAndSaysWhy() throws Exception {
    try (TripRecorder _ = shelf.begin("Wattle 2", 0)) {
      press("trips");
      assertThat(isOffered("trips-throw-away")).isFalse();
      assertThat(texts())
          .contains("still recording", "State")
          .anyMatch(text -> text.contains("it can be thrown away when its drive has ended"));
      key(KeyCode.DELETE);
      assertThat(listed()).hasSize(1);
    }
  }

  @Test
  void theMenuOfADriveLeadsToTheTripsAndBackAndNothingIsPlayedBesideIt() throws Exception {
    shelf.fill();
    press("drive");
    press("menu");
    press("menu-trips");
    assertThat(isOffered("trips-play")).isFalse();
    key(KeyCode.ESCAPE);
    assertThat(find("menu-trips")).isPresent();
  }

  /** Plus, the arrows and Home where the drawing has the keyboard. */
  @Test
  void theDrawingComesCloserMovesAndShowsAllAgain() throws Exception {
    shelf.fill();
    press("trips");
    keyAt("trip-strip", KeyCode.PLUS);
    assertThat(texts()).contains("13:03:40 to 13:10:20");
    keyAt("trip-strip", KeyCode.RIGHT);
    assertThat(texts()).contains("13:05:20 to 13:12:00");
    keyAt("trip-strip", KeyCode.MINUS);
    assertThat(texts()).contains("13:02 to 13:12");
    keyAt("trip-strip", KeyCode.PLUS);
    keyAt("trip-strip", KeyCode.HOME);
    assertThat(texts()).contains("13:02 to 13:12", "Least headroom 12° under: Coolant");
  }

  /** However many trips there are: only the rows in sight have nodes. */
  @Test
  void onlyRowsInSightAreBuilt() throws Exception {
    for (int day = 0; day < 60; day++) {
      shelf.library.keep(
          new NewTrip(
              Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR),
              TripShelf.START.plusSeconds(86_400L * day),
              Optional.of(TripShelf.THERE),
              TripDetails.NONE,
              "x",
              "1"),
          List.of(),
          0);
    }
    press("trips");
    assertThat(listed()).hasSize(60);
    assertThat(
            Fx.call(
                () -> Fx.visible(shell.root()).stream().filter(TripCell.class::isInstance).count()))
        .isBetween(5L, 12L);
  }
}
