package steadypull.drive;

import steadypull.store.LibraryException;
import steadypull.store.LinkIdentity;
import steadypull.store.NewTrip;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;
import steadypull.store.TripRecorder;

/**
 * Keeps the entries of a trip and survives a library that refuses: what could not be written is
 * tried again with the next second, and the driver is told meanwhile. Pipeline thread only.
 */
final class TripKeeper {
  private final TripRecorder recorder;
  private RecordingState state;

  /**
   * Begins a trip.
   *
   * @throws LibraryException if the library cannot take a new trip
   */
  TripKeeper(TripLibrary library, NewTrip trip) throws LibraryException {
    recorder = library.begin(trip);
    state = new RecordingState.Recording(recorder.tripId());
  }

  String tripId() {
    return recorder.tripId();
  }

  RecordingState state() {
    return state;
  }

  void keep(TripEntry entry) {
    attempt(
        () -> {
          switch (entry) {
            case TripEntry.OfSample sample -> recorder.append(sample.sample());
            case TripEntry.OfEvent event -> recorder.append(event.event());
          }
        });
  }

  /** Keeps who answers on this trip. */
  void describe(LinkIdentity link) {
    attempt(() -> recorder.describe(link), "");
  }

  /** Makes everything kept so far durable. */
  void commit(long timeMicros) {
    attempt(
        () -> {
          recorder.commit(timeMicros);
          state = new RecordingState.Recording(recorder.tripId());
        });
  }

  /** Ends the trip; if the state is a failed one afterwards, its end is missing. */
  void seal(long endMicros) {
    attempt(
        () -> {
          recorder.seal(endMicros);
          state = new RecordingState.Recording(recorder.tripId());
        },
        "");
    attempt(recorder::close, "");
  }

  private void attempt(Step step) {
    attempt(step, " What comes meanwhile is kept in memory and written as soon as it can be.");
  }

  private void attempt(Step step, String outlook) {
    try {
      step.run();
    } catch (LibraryException refused) {
      state = new RecordingState.Failed(FaultText.of(refused) + outlook);
    }
  }

  @FunctionalInterface
  private interface Step {
    void run() throws LibraryException;
  }
}
