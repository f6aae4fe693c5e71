package steadypull.drive;

/** Whether samples are being kept. A closed set. */
public sealed interface RecordingState {
  /**
   * Kept, durable at least once a second.
   *
   * @param tripId id of the trip
   */
  record Recording(String tripId) implements RecordingState {}

  /**
   * Not kept, though wanted.
   *
   * @param reason one clear message
   */
  record Failed(String reason) implements RecordingState {}

  /** Not yet: the next reading begins a trip. */
  record Waiting() implements RecordingState {}

  /** Not wanted: a replay. */
  record Off() implements RecordingState {}
}
