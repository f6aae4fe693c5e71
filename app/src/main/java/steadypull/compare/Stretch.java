package steadypull.compare;

import java.util.Optional;

/**
 * A stretch of high load in a trip. Immutable.
 *
 * @param onset second of the trip at which the load came on
 * @param end second after the last under load, later than the onset
 * @param beganUnderLoad whether the load was on before the part of the trip that counts began
 */
record Stretch(int onset, int end, boolean beganUnderLoad) {
  /** What of it lies in a part of the trip; empty if less than the shortest pull is left. */
  Optional<Stretch> within(TripPart.Span span) {
    int from = (int) Math.ceil(span.fromSeconds());
    int to = (int) Math.floor(span.toSeconds());
    int begins = Math.max(onset, from);
    int ends = Math.min(end, to);
    return ends - begins < LoadSearch.SHORTEST_SECONDS
        ? Optional.empty()
        : Optional.of(new Stretch(begins, ends, beganUnderLoad || begins > onset));
  }

  /** How long the load lasted. */
  int seconds() {
    return end - onset;
  }
}
