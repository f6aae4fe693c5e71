package steadypull.store.column;

/**
 * What is known of a line without reading any more of the trip.
 *
 * @param line what to draw; where it is not exact, the least and the greatest value of each bucket
 *     on every column that the bucket touches: the exact line stays between them
 * @param isExact whether it is the line itself
 */
public record KnownLine(PixelLine line, boolean isExact) {}
