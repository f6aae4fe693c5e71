package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.drive.DriveException;
import steadypull.drive.TripPicture;
import steadypull.drive.TripWindow;
import steadypull.drive.WholeTrip;
import steadypull.store.TripDamage;
import steadypull.store.TripSummary;

/** Whoever asks comes next, however much is being prepared. */
class TripLookTest {
  private static final int CLOSES_AFTER = 2;

  @TempDir Path folder;

  private final Queue<Runnable> waiting = new ArrayDeque<>();
  private final List<String> heard = new ArrayList<>();
  private TripShelf shelf;
  private List<TripSummary> trips = List.of();
  private TripLook look;

  @BeforeEach
  void open() throws Exception {
    shelf = new TripShelf(folder);
    shelf.fill();
    trips = shelf.library.trips(Optional.empty());
    look = new TripLook(shelf.desk(), waiting::add, 100, new Hearing());
  }

  @AfterEach
  void close() {
    shelf.close();
  }

  private long open(int trip) {
    long begun = look.begin();
    look.open(begun, trips.get(trip).id(), trips);
    return begun;
  }

  private int runAll() {
    int tasks = 0;
    while (!waiting.isEmpty()) {
      waiting.remove().run();
      tasks++;
    }
    return tasks;
  }

  @Test
  void theFirstTripIsFollowedByPreparationAndTheNextOneIsNot() {
    open(0);
    int first = runAll();
    open(1);
    int next = runAll();

    assertThat(heard)
        .containsExactly("opened 1", "drawn 1", "examined 1", "opened 2", "drawn 2", "examined 2");
    assertThat(first - next).isGreaterThanOrEqualTo(12);
  }

  @Test
  void whoTapsWaitsForOneStepOnlyAndEndsThePreparation() {
    open(0);
    waiting.remove().run();
    waiting.remove().run();
    assertThat(waiting).hasSize(1);
    open(1);
    waiting.remove().run();
    waiting.remove().run();

    assertThat(heard).containsExactly("opened 1", "drawn 1", "opened 2", "drawn 2");
    runAll();
    assertThat(heard).doesNotContain("examined 1").endsWith("examined 2");
  }

  @Test
  void ofManyWindowsOnlyTheLastIsDrawn() {
    open(0);
    runAll();
    heard.clear();
    TripWindow whole = TripWindow.whole(trips.getFirst());
    for (int times = 2; times < 9; times++) {
      look.show(whole.magnified(times, 0.5, whole));
    }
    runAll();

    assertThat(heard).containsExactly("exact 75 s of 1", "examined 1");
  }

  @Test
  void afterLeavingNothingIsDrawn() {
    open(0);
    look.close();
    runAll();

    assertThat(heard).isEmpty();
  }

  @Test
  void aWindowThatClosesWhileItPreparesLeavesItSilently() {
    Executor closing =
        step -> {
          if (waiting.size() + heard.size() >= CLOSES_AFTER) {
            throw new RejectedExecutionException("closed");
          }
          waiting.add(step);
        };
    look = new TripLook(shelf.desk(), closing, 100, new Hearing());
    open(0);
    runAll();

    assertThat(heard).containsExactly("opened 1", "drawn 1");
  }

  private final class Hearing implements TripLook.Listener {
    @Override
    public void opened(long number, WholeTrip trip) {
      heard.add("opened " + number);
    }

    @Override
    public void drawn(long number, TripPicture whole) {
      heard.add("drawn " + number);
    }

    @Override
    public void shown(long number, TripPicture window) {
      heard.add(
          "%s %d s of %d"
              .formatted(
                  window.isExact() ? "exact" : "bounds",
                  Math.round(window.window().widthMicros() / 1e6),
                  number));
    }

    @Override
    public void examined(long number, TripDamage damage) {
      heard.add("examined " + number);
    }

    @Override
    public void refused(long number, DriveException refused) {
      heard.add("refused " + number);
    }
  }
}
