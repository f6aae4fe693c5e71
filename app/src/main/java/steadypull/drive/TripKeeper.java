package steadypull.drive;

import java.util.Optional;
import steadypull.store.LibraryException;
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
  private Optional<String> lastTrouble = Optional.empty();

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

  Optional<String> lastTrouble() {
    return lastTrouble;
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

  /** Makes everything kept so far durable. */
  void commit(long timeMicros) {
    attempt(
        () -> {
          recorder.commit(timeMicros);
          state = new RecordingState.Recording(recorder.tripId());
        });
  }

  void seal(long endMicros) {
    attempt(() -> recorder.seal(endMicros));
    attempt(recorder::close);
  }

  private void attempt(Step step) {
    try {
      step.run();
    } catch (LibraryException refused) {
      lastTrouble = Optional.of(FaultText.of(refused));
      state = new RecordingState.Failed(FaultText.of(refused));
    }
  }

  @FunctionalInterface
  private interface Step {
    void run() throws LibraryException;
  }
}
