package steadypull.store.column;

/**
 * Where the segments of one trip lie, in their order. Called on the thread that asks {@link
 * TripLines}.
 */
public interface SegmentSource {
  /** How many segments there are; they are numbered from 0. */
  int count();

  /** The least time in a segment, microseconds since the start of the trip. */
  long firstMicros(int number);

  /** The greatest time in a segment, microseconds since the start of the trip. */
  long lastMicros(int number);

  /** What {@link SegmentBuilder#encode} gave. */
  byte[] segment(int number);

  /** What {@link SegmentBuilder#encodeOverview} gave of the same samples. */
  byte[] overview(int number);
}
