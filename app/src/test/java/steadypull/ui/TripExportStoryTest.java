package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Queue;
import java.util.concurrent.Executor;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.text.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.ExportEnd;
import steadypull.drive.ExportTarget;
import steadypull.drive.TripDesk;
import steadypull.store.LostPart;
import steadypull.store.TripDamage;
import steadypull.store.TripSummary;

/** A trip is written to a file from the window: how far, stopped, with and without loss. */
class TripExportStoryTest {
  private static final Words WORDS = new Words(Locale.ENGLISH);
  private static final QuantityFormat QUANTITIES =
      new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC);

  @TempDir Path folder;

  private final Queue<Runnable> waiting = new ArrayDeque<>();
  private TripShelf shelf;
  private Path file;

  @BeforeEach
  void open() throws Exception {
    shelf = new TripShelf(folder.resolve("library"));
    shelf.fill();
    file = folder.resolve("a.csv");
  }

  @AfterEach
  void close() {
    shelf.close();
  }

  private TripsScreen screen(TripDesk trips, TripExports exports) {
    TripsDesk desk = new TripsDesk(trips, WORDS, Runnable::run, exports);
    TripsScreen screen =
        new TripsScreen(
            WORDS,
            QUANTITIES,
            desk,
            new TripsScreen.Ways(
                false, _ -> Optional.of(ExportTarget.whole(file)), _ -> {}, () -> {}));
    new Scene(screen.root());
    desk.look(TripQuery.ALL);
    return screen;
  }

  private static TripExports exports(TripDesk trips, Executor thread) {
    return Fx.call(() -> new TripExports(trips, WORDS, thread));
  }

  private static Button export(TripsScreen screen) {
    return Fx.visible(screen.root()).stream()
        .filter(node -> "trips-export".equals(node.getId()))
        .map(Button.class::cast)
        .findFirst()
        .orElseThrow();
  }

  private static String pressed(TripsScreen screen) {
    return Fx.call(
        () -> {
          export(screen).fire();
          return export(screen).getAccessibleText();
        });
  }

  private static List<String> texts(TripsScreen screen) {
    return Fx.call(
        () -> {
          screen.root().applyCss();
          screen.root().layout();
          return Fx.visible(screen.root()).stream()
              .filter(Text.class::isInstance)
              .map(node -> ((Text) node).getText())
              .toList();
        });
  }

  /** Otherwise a window that wants to close would wait for it for ever. */
  @Test
  void aFaultOfTheProgramEndsTheExportToo() throws Exception {
    TripDesk broken =
        (TripDesk)
            Proxy.newProxyInstance(
                TripDesk.class.getClassLoader(),
                new Class<?>[] {TripDesk.class},
                (_, _, _) -> {
                  throw new IllegalStateException("broken");
                });
    TripExports exports = exports(broken, waiting::add);
    TripSummary trip = shelf.library.trips(Optional.empty()).getFirst();
    Fx.run(() -> exports.begin(trip, ExportTarget.whole(file), QUANTITIES));
    Runnable writing = waiting.remove();

    assertThatThrownBy(writing::run).hasMessage("broken");
    assertThat(Fx.call(() -> exports.runningProperty().get())).isEmpty();
    assertThat(Fx.call(() -> exports.toldProperty().get()))
        .isInstanceOf(TripsModel.Told.Refused.class);
  }

  @Test
  void theButtonThatBeganAnExportSaysHowFarItIsAndEndsIt() {
    TripExports exports = exports(shelf.desk(), waiting::add);
    TripsScreen screen = Fx.call(() -> screen(shelf.desk(), exports));
    assertThat(pressed(screen)).isEqualTo("Stop, 0 %");
    Fx.run(() -> exports.reach(43));
    assertThat(Fx.call(() -> export(screen).getAccessibleText())).isEqualTo("Stop, 43 %");
    assertThat(texts(screen)).contains("Writing " + file);

    pressed(screen);
    Fx.run(waiting.remove());
    assertThat(texts(screen)).contains("Stopped, as asked. " + file + " is as it was before.");
    assertThat(Fx.call(() -> export(screen).getAccessibleText())).isEqualTo("Export");
    assertThat(file).doesNotExist();
  }

  @Test
  void theShareThatIsDoneRisesWhileSamplesAreWritten() {
    TripExports exports = exports(shelf.desk(), Runnable::run);
    List<Integer> reached = new ArrayList<>();
    Fx.run(
        () ->
            exports
                .runningProperty()
                .addListener(
                    (_, _, running) -> running.ifPresent(each -> reached.add(each.percent()))));
    TripsScreen screen = Fx.call(() -> screen(shelf.desk(), exports));
    pressed(screen);

    assertThat(texts(screen)).contains("Written: " + file);
    assertThat(file).isNotEmptyFile();
    assertThat(reached).isSorted().startsWith(0).hasSizeGreaterThan(0);
    assertThat(reached.getLast()).isBetween(0, 100);
  }

  /** What was tried, expected, found, and what to do: as the export command says it. */
  @Test
  void aTripThatIsDamagedIsWrittenAndWhatIsMissingSaid() throws Exception {
    String id = shelf.library.trips(Optional.empty()).getFirst().id();
    LostPart part = new LostPart(id, false, 60, OptionalDouble.of(119.2), 1_200, List.of());
    ToldTrips damaged =
        new ToldTrips(
            shelf.desk(),
            new TripDamage(id, List.of(part), true),
            new ExportEnd.Written(new TripDamage(id, List.of(part), true)));
    TripExports exports = exports(damaged, Runnable::run);
    TripsScreen screen = Fx.call(() -> screen(damaged, exports));
    assertThat(texts(screen))
        .contains(
            "1,200 samples from 0:01:00 to 0:02:00; some events cannot be read."
                + " Steadypull check salvages the rest.");
    pressed(screen);

    assertThat(texts(screen))
        .anyMatch(
            text ->
                text.startsWith("Wrote " + file + ", but not all of trip " + id)
                    && text.contains("every sample was expected")
                    && text.contains("1,200 samples from 0:01:00 to 0:02:00; some events")
                    && text.contains("steadypull check"));
  }

  /** Whoever left the screen meanwhile hears of it on the next visit, once. */
  @Test
  void whatWasWrittenMeanwhileIsToldOnTheNextVisit() {
    TripExports exports = exports(shelf.desk(), waiting::add);
    TripsScreen first = Fx.call(() -> screen(shelf.desk(), exports));
    pressed(first);
    Fx.run(first::leaving);
    Fx.run(waiting.remove());

    assertThat(texts(first)).doesNotContain("Written: " + file);
    TripsScreen second = Fx.call(() -> screen(shelf.desk(), exports));
    assertThat(texts(second)).contains("Written: " + file);
    TripsScreen third = Fx.call(() -> screen(shelf.desk(), exports));
    assertThat(texts(third)).doesNotContain("Written: " + file);
  }

  /** The program ends only when nothing is half written. */
  @Test
  void theWindowClosesWhenTheExportHasEnded() throws Exception {
    TripExports exports = exports(shelf.desk(), waiting::add);
    TripSummary trip = shelf.library.trips(Optional.empty()).getFirst();
    List<String> ends = new ArrayList<>();
    Fx.run(
        () -> {
          exports.begin(trip, ExportTarget.whole(file), QUANTITIES);
          exports.stopAndThen(() -> ends.add("closed"));
        });
    assertThat(ends).isEmpty();
    Fx.run(waiting.remove());
    assertThat(ends).containsExactly("closed");
    assertThat(folder).isDirectoryNotContaining("glob:**.{csv,part}");
  }
}
