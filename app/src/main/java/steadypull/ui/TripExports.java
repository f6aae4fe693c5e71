package steadypull.ui;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import steadypull.channel.QuantityFormat;
import steadypull.drive.DriveException;
import steadypull.drive.ExportEnd;
import steadypull.drive.ExportTarget;
import steadypull.drive.TripDesk;
import steadypull.store.TripSummary;
import steadypull.ui.TripsModel.Told;

/**
 * Writes trips to files, one at a time, on a thread of its own: whoever chooses another trip or
 * leaves the screen meanwhile waits for nothing. FX thread only.
 */
final class TripExports {
  private static final int WHOLE_PERCENT = 100;

  private final TripDesk desk;
  private final Words words;
  private final Executor thread;
  private final ReadOnlyObjectWrapper<Optional<Running>> running =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Told> told = new ReadOnlyObjectWrapper<>(new Told.Nothing());

  private boolean isUnheard;
  private AtomicBoolean isStopped = new AtomicBoolean();
  private Runnable ended = () -> {};

  /**
   * An export under way.
   *
   * @param percent how much is done, 0 to 100
   */
  record Running(TripSummary trip, Path file, int percent) {}

  TripExports(TripDesk desk, Words words, Executor thread) {
    this.desk = desk;
    this.words = words;
    this.thread = thread;
  }

  /** What is being written; empty if nothing is. */
  ReadOnlyObjectProperty<Optional<Running>> runningProperty() {
    return running.getReadOnlyProperty();
  }

  /** What was said last of an export. */
  ReadOnlyObjectProperty<Told> toldProperty() {
    return told.getReadOnlyProperty();
  }

  /** Begins to write a trip, unless another is being written. */
  void begin(TripSummary trip, ExportTarget target, QuantityFormat quantities) {
    if (running.get().isPresent()) {
      return;
    }
    Path file = target.file();
    AtomicBoolean stopped = new AtomicBoolean();
    isStopped = stopped;
    running.set(Optional.of(new Running(trip, file, 0)));
    tell(new Told.Done(words.say("trips.writing", file.toString())));
    thread.execute(
        () -> {
          Told outcome = new Told.Refused(words.say("trips.writingFailed", file.toString()));
          try {
            outcome = write(trip, target, stopped, quantities);
          } finally {
            // Whatever fails: a window that wants to close waits for this end.
            Told said = outcome;
            FxThread.run(() -> end(said));
          }
        });
  }

  private Told write(
      TripSummary trip, ExportTarget target, AtomicBoolean stopped, QuantityFormat quantities) {
    int[] percent = {0};
    try {
      ExportEnd end =
          desk.export(
              trip.id(),
              target,
              share -> {
                int reached = (int) (share * WHOLE_PERCENT);
                if (reached != percent[0]) {
                  percent[0] = reached;
                  FxThread.run(() -> reach(reached));
                }
                return !stopped.get();
              });
      return told(end, trip, target.file(), quantities);
    } catch (DriveException refused) {
      return new Told.Refused(String.valueOf(refused.getMessage()));
    }
  }

  private Told told(ExportEnd end, TripSummary trip, Path file, QuantityFormat quantities) {
    return switch (end) {
      case ExportEnd.Stopped _ -> new Told.Done(words.say("trips.writingStopped", file.toString()));
      case ExportEnd.Written(var damage) when damage.isNone() ->
          new Told.Done(words.say("trips.written", file.toString()));
      case ExportEnd.Written(var damage) ->
          new Told.DoneWithLoss(
              words.say(
                  "trips.writtenWithLoss",
                  file.toString(),
                  trip.id(),
                  new TripDamageWords(words, quantities).missing(damage)));
    };
  }

  /** Shows how far the export has come. */
  void reach(int percent) {
    running.set(running.get().map(known -> new Running(known.trip(), known.file(), percent)));
  }

  private void end(Told outcome) {
    running.set(Optional.empty());
    tell(outcome);
    ended.run();
    ended = () -> {};
  }

  private void tell(Told said) {
    isUnheard = true;
    told.set(said);
  }

  /** What was said last of an export, if nobody has heard it yet. */
  Optional<Told> takeUnheard() {
    boolean isNew = isUnheard;
    isUnheard = false;
    return isNew ? Optional.of(told.get()) : Optional.empty();
  }

  /** Ends what is being written; an old file of that name is then as it was. */
  void stop() {
    isStopped.set(true);
  }

  /** Ends what is being written and goes on when it has ended. */
  void stopAndThen(Runnable after) {
    stop();
    if (running.get().isPresent()) {
      ended = after;
    } else {
      after.run();
    }
  }
}
