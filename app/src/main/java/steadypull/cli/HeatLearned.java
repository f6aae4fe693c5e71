package steadypull.cli;

import java.io.PrintWriter;
import steadypull.drive.TripTeacher;
import steadypull.exchange.TransferWatch;
import steadypull.store.KnownHeat;
import steadypull.store.LibraryException;

/**
 * Learns of their vehicles' heat from trips that were taken in; Ctrl-C leaves the rest for later.
 */
final class HeatLearned {
  private final KnownHeat heat;
  private final PrintWriter notes;

  HeatLearned(KnownHeat heat, PrintWriter notes) {
    this.heat = heat;
    this.notes = notes;
  }

  /** Learns from all trips that wait; the trips themselves are safe whatever happens here. */
  void learn() {
    TransferProgress progress = new TransferProgress(notes);
    try (var _ = StopSignals.call(heat::stopLearning)) {
      TransferWatch watch =
          progress.watch("Learning how vehicles take heat", Math.max(1, heat.waiting()));
      TripTeacher teacher = new TripTeacher();
      for (int done = 1; heat.learnNext(teacher); done++) {
        watch.goesOn(done);
      }
      heat.unlearnt().forEach(notes::println);
    } catch (LibraryException e) {
      notes.printf(
          "The trips are in. What they tell of their vehicle's heat will be learnt with the next"
              + " drive or import: %s%n",
          e.getMessage());
    } finally {
      progress.finish();
      notes.flush();
    }
  }
}
