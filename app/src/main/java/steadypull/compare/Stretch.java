package steadypull.compare;

import java.util.Optional;

/**
 * A stretch of high load in a trip. Immutable.
 *
 * @param onset second of the trip at which the load came on
 * @param end second after the last under load, later than the onset
 * @param beginning how its onset is known
 */
record Stretch(int onset, int end, Beginning beginning) {
  /** How an onset is known. A closed set. */
  enum Beginning {
    /** The load was heard to come on. */
    HEARD,
    /** It was on when it was first heard, after a silence or at the start of the trip. */
    SILENT,
    /** It was on before the part of the trip that somebody chose. */
    CHOSEN
  }

  /** What of it lies in a part of the trip; empty if less than the shortest pull is left. */
  Optional<Stretch> within(TripPart.Span span) {
    int from = (int) Math.ceil(span.fromSeconds());
    int to = (int) Math.floor(span.toSeconds());
    int begins = Math.max(onset, from);
    int ends = Math.min(end, to);
    return ends - begins < LoadSearch.SHORTEST_SECONDS
        ? Optional.empty()
        : Optional.of(new Stretch(begins, ends, begins > onset ? Beginning.CHOSEN : beginning));
  }

  /** How long the load lasted. */
  int seconds() {
    return end - onset;
  }
}
