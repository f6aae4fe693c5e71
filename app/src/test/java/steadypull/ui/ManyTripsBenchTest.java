package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.control.ListView;
import javafx.scene.control.TextInputControl;
import javafx.stage.Stage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.TripWindow;
import steadypull.store.NewTrip;
import steadypull.store.TripAdder;
import steadypull.store.TripSummary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * The trips screen over 10 000 trips, on the headless platform: how long an answer takes, and how
 * long the screen's own thread was held up meanwhile: {@code mvn -q -Pbench}.
 */
@Tag("bench")
class ManyTripsBenchTest {
  private static final int TRIPS = 10_000;
  private static final int ROUNDS = 12;
  private static final Words WORDS = new Words(Locale.ENGLISH);

  @TempDir Path folder;

  private TripsModel model = new TripsModel();

  private interface Action {
    void act(int round);
  }

  @Test
  void printWaits() throws Exception {
    ExecutorService thread = Executors.newSingleThreadExecutor();
    try (TripShelf shelf = new TripShelf(folder)) {
      shelf.library.addTrips(ManyTripsBenchTest::add);
      TripsDesk desk =
          Fx.call(
              () ->
                  new TripsDesk(
                      shelf.desk(),
                      WORDS,
                      thread,
                      new TripExports(shelf.desk(), WORDS, Runnable::run)));
      model = desk.model();
      TripsScreen screen = Fx.call(() -> shown(desk));
      System.out.printf(
          Locale.ROOT,
          "load %.1f; ms, median and worst of %d%n",
          ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(),
          ROUNDS);
      print(
          "another vehicle chosen",
          true,
          round ->
              desk.look(
                  TripQuery.ALL.withVehicle(
                      Optional.of("Quarry tipper").filter(_ -> round % 2 == 0))));
      TextInputControl search = (TextInputControl) find(screen, "trips-search");
      print(
          "a letter typed", true, round -> search.setText("baseline".substring(0, 1 + round % 7)));
      @SuppressWarnings("unchecked")
      ListView<TripSummary> list = (ListView<TripSummary>) find(screen, "trips-list");
      print("scrolled", false, round -> list.scrollTo(round * 611));
      print("chosen", false, round -> list.getSelectionModel().select(round * 7));
      TripWindow whole =
          Fx.call(
              () -> TripWindow.whole(model.chosenProperty().get().orElseThrow().trip().summary()));
      print("come closer", false, round -> desk.show(whole.magnified(1 + round, 0.3, whole)));
      Fx.run(desk::leave);
      assertThat(Fx.call(list::getItems)).isNotEmpty();
    } finally {
      thread.shutdown();
    }
  }

  private static TripsScreen shown(TripsDesk desk) {
    TripsScreen screen =
        new TripsScreen(
            WORDS,
            new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC),
            desk,
            new TripsScreen.Ways(false, _ -> Optional.empty(), _ -> {}, () -> {}));
    Stage stage = new Stage();
    stage.setScene(new Scene(screen.root(), 1280, 800));
    stage.show();
    desk.look(TripQuery.ALL);
    return screen;
  }

  private static Object find(TripsScreen screen, String id) {
    return Fx.call(
        () ->
            Fx.visible(screen.root()).stream()
                .filter(node -> id.equals(node.getId()))
                .findFirst()
                .orElseThrow());
  }

  /** Asks the screen's thread again and again until it is at rest, and keeps the longest wait. */
  private void print(String what, boolean isListed, Action action) throws Exception {
    double[] answered = new double[ROUNDS];
    double[] held = new double[ROUNDS];
    for (int round = 0; round < ROUNDS; round++) {
      int number = round;
      CountDownLatch answer = new CountDownLatch(isListed ? 1 : 0);
      AtomicLong answeredAt = new AtomicLong();
      Fx.run(
          () ->
              model
                  .listedProperty()
                  .addListener(
                      (_, _, _) -> {
                        answeredAt.compareAndSet(0, System.nanoTime());
                        answer.countDown();
                      }));
      long asked = System.nanoTime();
      Platform.runLater(() -> action.act(number));
      long longest = 0;
      int calm = 0;
      while (answer.getCount() > 0 || calm < 20) {
        calm = answer.getCount() > 0 ? 0 : calm + 1;
        long begun = System.nanoTime();
        Fx.run(() -> {});
        longest = Math.max(longest, System.nanoTime() - begun);
        LockSupport.parkNanos(1_000_000);
      }
      answered[round] = isListed ? (answeredAt.get() - asked) / 1e6 : 0;
      held[round] = longest / 1e6;
    }
    print(what + ", screen held up", held);
    if (isListed) {
      print(what + ", answered", answered);
    }
  }

  private static void print(String what, double[] millis) {
    Arrays.sort(millis);
    System.out.printf(
        Locale.ROOT,
        "%-40s %6.1f %6.1f%n",
        what,
        millis[millis.length / 2],
        millis[millis.length - 1]);
  }

  private static int add(TripAdder adder) {
    Vehicle[] vehicles = {
      Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR),
      Vehicle.unknown("Quarry tipper", CoolingLayout.AIR_TO_AIR)
    };
    for (int number = 0; number < TRIPS; number++) {
      NewTrip trip =
          new NewTrip(
              vehicles[number % vehicles.length],
              Instant.parse("2016-01-17T02:02:00Z").plusSeconds(32_000L * number),
              List.of("baseline", "after", "").get(number % 3),
              "bench",
              "0.1.0");
      adder.begin(trip).seal(600_000_000L);
    }
    return TRIPS;
  }
}
