package steadypull.cli;

import java.io.PrintWriter;
import java.util.Optional;
import steadypull.exchange.TransferWatch;
import steadypull.store.KnownRoads;
import steadypull.store.LearnedTrip;
import steadypull.store.LibraryException;

/** Learns the roads of trips that were taken in; Ctrl-C leaves the rest for the next time. */
final class RoadLessons {
  private final KnownRoads roads;
  private final PrintWriter notes;

  RoadLessons(KnownRoads roads, PrintWriter notes) {
    this.roads = roads;
    this.notes = notes;
  }

  /** Learns from all trips that wait; the trips themselves are safe whatever happens here. */
  void learn() {
    TransferProgress progress = new TransferProgress(notes);
    try (var _ = StopSignals.call(roads::stopLearning)) {
      learn(progress, Math.max(1, roads.waiting()));
      roads.unlearnt().forEach(notes::println);
    } catch (LibraryException e) {
      notes.printf(
          "The trips are in. Their roads will be learned with the next drive or import: %s%n",
          e.getMessage());
    } finally {
      progress.finish();
      notes.flush();
    }
  }

  private void learn(TransferProgress progress, int trips) throws LibraryException {
    TransferWatch watch = progress.watch("Learning roads", trips);
    int passes = 0;
    int done = 0;
    for (Optional<LearnedTrip> learned = roads.learnNext();
        learned.isPresent();
        learned = roads.learnNext()) {
      passes += learned.get().passes();
      watch.goesOn(++done);
    }
    if (passes > 0) {
      notes.printf("Learned the roads of %s.%n", Counted.of(done, "trip", "trips"));
    }
  }
}
