package steadypull.drive;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import steadypull.advice.AdviceEvent;
import steadypull.store.LibraryException;
import steadypull.store.LinkIdentity;
import steadypull.store.NewTrip;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;
import steadypull.thermal.Forecast;

/**
 * Keeps every entry of one trip, makes each second durable, then lets the observer see it. While a
 * trip is only waited for there are seconds to show, but nothing to keep. Pipeline thread only.
 */
final class TripOutput implements PipelineOutput {
  private final boolean begun;
  private final PipelineOutput observer;
  private @Nullable TripKeeper keeper;
  private RecordingState refused = new RecordingState.Waiting();
  private Optional<DriveSnapshot> shown;

  /**
   * Makes an output that keeps nothing yet.
   *
   * @param begun whether the trip has begun
   * @param observer sees the entries of a trip that has begun, and every second
   * @param shown what the driver saw last
   */
  TripOutput(boolean begun, PipelineOutput observer, Optional<DriveSnapshot> shown) {
    this.begun = begun;
    this.observer = observer;
    this.shown = shown;
  }

  /** Opens the record; a library that refuses it leaves the trip unrecorded, and says so. */
  void open(TripLibrary library, NewTrip trip) {
    try {
      keeper = new TripKeeper(library, trip);
    } catch (LibraryException refusal) {
      refused = new RecordingState.Failed(FaultText.of(refusal));
    }
  }

  /** Keeps who answers with the record, if there is one. */
  void describe(LinkIdentity link) {
    TripKeeper kept = keeper;
    if (kept != null) {
      kept.describe(link);
    }
  }

  /**
   * Seals the record.
   *
   * @param endMicros microseconds since trip start
   * @return the trip's id; empty if there is no record
   */
  Optional<String> seal(long endMicros) {
    TripKeeper kept = keeper;
    if (kept == null) {
      return Optional.empty();
    }
    kept.seal(endMicros);
    return Optional.of(kept.tripId());
  }

  RecordingState recording() {
    TripKeeper kept = keeper;
    return kept == null ? refused : kept.state();
  }

  /** What the driver saw last, also before this trip; empty if nothing yet. */
  Optional<DriveSnapshot> shown() {
    return shown;
  }

  @Override
  public void entry(TripEntry entry) {
    TripKeeper kept = keeper;
    if (kept != null) {
      kept.keep(entry);
    }
    if (begun) {
      observer.entry(entry);
    }
  }

  @Override
  public void advice(AdviceEvent event) {
    if (begun) {
      observer.advice(event);
    }
  }

  @Override
  public void forecast(Forecast forecast) {
    observer.forecast(forecast);
  }

  @Override
  public void second(DriveSnapshot snapshot) {
    TripKeeper kept = keeper;
    if (kept != null) {
      kept.commit(snapshot.timeMicros());
    }
    DriveSnapshot next = snapshot.with(recording());
    shown = Optional.of(next);
    observer.second(next);
  }

  @Override
  public void answered(DriveSnapshot snapshot) {
    observer.answered(snapshot.with(recording()));
  }
}
