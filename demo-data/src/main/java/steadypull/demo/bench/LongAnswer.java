package steadypull.demo.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A control unit's answer of more than one frame, ISO 15765-2: after the first frame it waits for
 * flow control, sends as many as that allows as far apart as that asks, and waits again.
 */
final class LongAnswer {
  /** N_Bs: 75 ms, ISO 15765-4 (from memory). */
  private static final long PATIENCE_NANOS = 75_000_000;

  private static final long REACTION_NANOS = 400_000;
  private static final long LEAST_SEPARATION_NANOS = 400_000;
  private static final int IN_FIRST = 6;
  private static final int IN_CONSECUTIVE = 7;

  private final int identifier;
  private final byte[] payload;
  private final Filler filler;
  private int offset = IN_FIRST;
  private int sequence = 1;
  private long waitsFrom;
  private long waitsUntil;

  LongAnswer(int identifier, byte[] payload, Filler filler, long nanos) {
    this.identifier = identifier;
    this.payload = payload.clone();
    this.filler = filler;
    waitFor(nanos);
  }

  /** 1h ll: the length in twelve bits, then six bytes. */
  CanFrame first(long nanos) {
    byte[] data = new byte[8];
    data[0] = (byte) (0x10 | payload.length >> 8);
    data[1] = (byte) payload.length;
    System.arraycopy(payload, 0, data, 2, IN_FIRST);
    return new CanFrame(nanos, identifier, data);
  }

  /** What follows on flow control 3s, block size, separation; nothing if it comes too late. */
  List<CanFrame> obey(byte[] flowControl, long nanos) {
    if (nanos < waitsFrom || nanos > waitsUntil || flowControl.length < 3) {
      return List.of();
    }
    return switch (flowControl[0] & 0x0F) {
      case 0 -> goOn(flowControl[1] & 0xFF, separation(flowControl[2] & 0xFF), nanos);
      case 1 -> {
        waitFor(nanos);
        yield List.of();
      }
      default -> {
        waitsUntil = Long.MIN_VALUE;
        yield List.of();
      }
    };
  }

  private List<CanFrame> goOn(int blockSize, long separation, long nanos) {
    List<CanFrame> frames = new ArrayList<>();
    long at = nanos + REACTION_NANOS;
    int most = blockSize == 0 ? Integer.MAX_VALUE : blockSize;
    while (offset < payload.length && frames.size() < most) {
      int until = Math.min(payload.length, offset + IN_CONSECUTIVE);
      byte[] part = Arrays.copyOfRange(payload, offset, until);
      frames.add(new CanFrame(at, identifier, filler.filled(0x20 | (sequence & 0x0F), part)));
      offset = until;
      sequence++;
      waitFor(at);
      at += separation;
    }
    if (offset == payload.length) {
      waitsUntil = Long.MIN_VALUE;
    }
    return frames;
  }

  private void waitFor(long nanos) {
    waitsFrom = nanos;
    waitsUntil = nanos + PATIENCE_NANOS;
  }

  /** 00 to 7F ms, F1 to F9 hundreds of us; reserved values count as 7F. */
  private static long separation(int code) {
    if (code >= 0xF1 && code <= 0xF9) {
      return Math.max(LEAST_SEPARATION_NANOS, (code - 0xF0) * 100_000L);
    }
    return Math.max(LEAST_SEPARATION_NANOS, Math.min(code, 0x7F) * 1_000_000L);
  }
}
