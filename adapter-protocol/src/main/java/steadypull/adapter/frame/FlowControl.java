package steadypull.adapter.frame;

import java.time.Duration;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;

/**
 * ISO 15765-2 flow control: byte 0 is 3s with the status s, byte 1 the block size, byte 2 the least
 * separation, the rest filler. Immutable.
 *
 * @param status whether the sender may go on
 * @param blockSize consecutive frames until the next flow control, 1 to 255; 0 for all of them
 * @param separationCode least separation of two consecutive frames as it stands on the bus, 0 to
 *     0xFF
 */
public record FlowControl(Status status, int blockSize, int separationCode) {

  /** The low half of byte 0. A closed set: other values end the sending. */
  public enum Status {
    /** 0: send the next block. */
    CONTINUE(0),
    /** 1: another flow control follows. */
    WAIT(1),
    /** 2: the message is too long for the receiver. */
    OVERFLOW(2);

    private final int number;

    Status(int number) {
      this.number = number;
    }
  }

  /** What a tester answers to every first frame: all at once (ISO 15765-4). */
  public static final FlowControl ALL_AT_ONCE = new FlowControl(Status.CONTINUE, 0, 0);

  /** Refuses a message that is too long. */
  public static final FlowControl TOO_LONG = new FlowControl(Status.OVERFLOW, 0, 0);

  private static final int KIND = 0x30;
  private static final int SHORTEST = 3;

  /** The longest separation that can be written, also meant by reserved codes. */
  private static final Duration LONGEST_SEPARATION = Duration.ofMillis(127);

  public FlowControl {
    Objects.requireNonNull(status);
    if (blockSize < 0 || blockSize > 0xFF || separationCode < 0 || separationCode > 0xFF) {
      throw new IllegalArgumentException(
          "Block size and separation are one byte each, found %d and %d"
              .formatted(blockSize, separationCode));
    }
  }

  /** Whether a frame's bytes claim to be a flow control. */
  static boolean isOne(Payload bytes) {
    return bytes.size() > 0 && (bytes.at(0) & 0xF0) == KIND;
  }

  /** Reads a frame's bytes; empty if it is none, too short, or of a reserved status. */
  static Optional<FlowControl> parse(Payload bytes) {
    if (!isOne(bytes) || bytes.size() < SHORTEST) {
      return Optional.empty();
    }
    int number = bytes.at(0) & 0x0F;
    return Arrays.stream(Status.values())
        .filter(status -> status.number == number)
        .map(status -> new FlowControl(status, bytes.at(1), bytes.at(2)))
        .findFirst();
  }

  /** 00 to 7F milliseconds, F1 to F9 hundreds of microseconds; everything else is reserved. */
  public Duration separation() {
    if (separationCode <= 0x7F) {
      return Duration.ofMillis(separationCode);
    }
    return separationCode >= 0xF1 && separationCode <= 0xF9
        ? Duration.ofNanos((separationCode - 0xF0) * 100_000L)
        : LONGEST_SEPARATION;
  }

  /** The eight bytes on the bus. */
  public Payload toBytes() {
    byte[] bytes = {(byte) (KIND | status.number), (byte) blockSize, (byte) separationCode};
    return Payload.of(Arrays.copyOf(bytes, CanFrame.MOST_BYTES));
  }
}
