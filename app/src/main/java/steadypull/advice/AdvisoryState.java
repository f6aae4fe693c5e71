package steadypull.advice;

/**
 * The life cycle of an advisory, after the alarm states of ANSI/ISA-18.2-2016 and IEC 62682. An
 * advisory that has returned needs no answer: it leaves by itself after its words have been read. A
 * rule that is out of service takes part in no advisory. A closed set; times are microseconds since
 * trip start.
 */
sealed interface AdvisoryState {
  /** Nothing is raised. */
  record Normal() implements AdvisoryState {}

  /** Raised, nobody has answered. */
  record Unacknowledged() implements AdvisoryState {}

  /** Raised, and the driver knows or acts. */
  record Acknowledged(long timeMicros) implements AdvisoryState {}

  /** Raised, put aside for a while. */
  record Shelved(long untilMicros, Urgency urgency) implements AdvisoryState {}

  /** The condition has gone; said for a while. */
  record Returned(long sinceMicros) implements AdvisoryState {}

  /** Not judged, by design: the engine is off, or a rule's {@code suppressed_while} holds. */
  record Suppressed(long sinceMicros) implements AdvisoryState {}
}
