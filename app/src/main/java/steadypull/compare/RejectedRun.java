package steadypull.compare;

/**
 * A run, or a trip in which none was found, that does not take part, and why. Immutable.
 *
 * @param source the trip's id, or the file's name
 * @param onsetSeconds of the trip, or 0 if no run was found
 * @param side before or after
 * @param reason in a sentence for a reader, with figures
 */
public record RejectedRun(String source, double onsetSeconds, Side side, String reason) {}
