package steadypull.store.column;

/**
 * Bytes that are no whole segment or overview: cut off, changed, or of a newer form. The message
 * says what was tried, expected and found.
 */
public final class DamagedSegmentException extends Exception {
  private static final long serialVersionUID = 1;

  DamagedSegmentException(String expected, String found) {
    super(
        "Could not read a piece of a trip: expected %s, found %s. The rest of the trip is not touched by it."
            .formatted(expected, found));
  }
}
