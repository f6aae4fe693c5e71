package steadypull.store.column;

import java.util.List;
import java.util.stream.IntStream;

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

  /**
   * The segments from a number up to another, which is left out; where that is quicker, at once.
   */
  default List<byte[]> segments(int from, int to) {
    return IntStream.range(from, to).mapToObj(this::segment).toList();
  }

  /** What {@link SegmentBuilder#encodeOverview} gave of the same samples. */
  byte[] overview(int number);

  /**
   * The overviews from a number up to another, which is left out; where that is quicker, at once.
   */
  default List<byte[]> overviews(int from, int to) {
    return IntStream.range(from, to).mapToObj(this::overview).toList();
  }
}
