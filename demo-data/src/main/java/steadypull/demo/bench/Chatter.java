package steadypull.demo.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * What control units say to each other on a CAN bus: frames at even distances with invented
 * identifiers that no diagnostic answer has, 8 bytes each, the first of them counting.
 */
final class Chatter {
  private static final int FIRST_IDENTIFIER = 0x0A0;
  private static final int FIRST_LONG_IDENTIFIER = 0x0CA00010;
  private static final int IDENTIFIERS = 24;
  private static final long NANOS = 1_000_000_000;

  /** Whoever looks later than this has missed what was before. */
  private static final int MOST_AT_ONCE = 500;

  private final int framesPerSecond;
  private final int firstIdentifier;
  private long count;

  Chatter(VehicleTraits vehicle) {
    framesPerSecond = vehicle.protocol().isCan() ? vehicle.framesPerSecond() : 0;
    firstIdentifier = vehicle.protocol().isLong() ? FIRST_LONG_IDENTIFIER : FIRST_IDENTIFIER;
  }

  /** The frames up to a moment that were not taken yet. */
  List<CanFrame> until(long nanos) {
    List<CanFrame> frames = new ArrayList<>();
    long end = countAt(nanos);
    for (count = Math.max(count, end - MOST_AT_ONCE); count < end; count++) {
      int identifier = firstIdentifier + (int) (count % IDENTIFIERS);
      byte[] data = {(byte) (count / IDENTIFIERS), 0x41, 0x0C, 0x1F, 0x40, 0x10, 0x14, 0};
      frames.add(new CanFrame(momentOf(count), identifier, data));
    }
    return frames;
  }

  /** Forgets the frames up to a moment. */
  void skip(long nanos) {
    count = Math.max(count, countAt(nanos));
  }

  /** When the next frame comes; empty if none ever does. */
  OptionalLong nextNanos() {
    return framesPerSecond == 0 ? OptionalLong.empty() : OptionalLong.of(momentOf(count));
  }

  private long countAt(long nanos) {
    return nanos / NANOS * framesPerSecond + nanos % NANOS * framesPerSecond / NANOS;
  }

  private long momentOf(long number) {
    return Math.ceilDiv((number + 1) * NANOS, framesPerSecond);
  }
}
