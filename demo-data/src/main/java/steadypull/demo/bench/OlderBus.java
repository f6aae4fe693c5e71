package steadypull.demo.bench;

import static steadypull.demo.bench.Parameters.join;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;

/**
 * The vehicle's bus before CAN: messages with a header of three bytes and a check byte. On the
 * K-line a session is lost after five seconds of silence (P3max) and requests keep a distance of 55
 * ms from what came before (P3min), ISO 14230-2 and ISO 9141-2, from memory.
 */
final class OlderBus {
  private static final long SESSION_NANOS = 5_000_000_000L;
  private static final long LEAST_DISTANCE_NANOS = 55_000_000;
  private static final long BETWEEN_MESSAGES_NANOS = 28_000_000;
  private static final int TESTER = 0xF1;
  private static final int K_LINE_BITS = 10; // start and stop bit
  private static final double NANOS = 1e9;
  private static final HexFormat HEX = HexFormat.of();

  private final BenchVehicle vehicle;
  private final BusProtocol protocol;
  private final Dialect dialect;
  private final AnswerTimes times;
  private long lastEnd = Long.MIN_VALUE / 2;
  private boolean isBegun;

  OlderBus(BenchVehicle vehicle, BenchSettings settings) {
    this.vehicle = vehicle;
    protocol = settings.vehicle().protocol();
    dialect = Dialect.of(settings.vehicle());
    times = new AnswerTimes(settings);
  }

  /** Whether a request would be heard without beginning a session first. */
  boolean isReady(long nanos) {
    return !protocol.isKLine() || (isBegun && nanos - lastEnd <= SESSION_NANOS);
  }

  /** Begins a session. */
  void begin(long nanos) {
    isBegun = true;
    lastEnd = nanos;
  }

  void end() {
    isBegun = false;
  }

  /** When a request that is wanted at a moment will have gone out whole. */
  long sending(byte[] payload, long nanos) {
    long from = protocol.isKLine() ? Math.max(nanos, lastEnd + LEAST_DISTANCE_NANOS) : nanos;
    return from + lasts(OlderFrame.HEADER_BYTES + payload.length + 1);
  }

  /**
   * Lists the messages that answer a request, first first.
   *
   * @param header three bytes as the tester set them, or none for the usual ones
   * @param sent when the request had gone out
   */
  List<Frame> exchange(byte[] header, byte[] payload, long sent) {
    List<Frame> frames = new ArrayList<>();
    if (payload.length == 0 || !isReady(sent) || !vehicle.isAwake(sent / NANOS)) {
      return frames;
    }
    vehicle.advanceTo(sent / NANOS);
    for (ControlUnit unit : vehicle.controlUnits(sent / NANOS)) {
      if (isFunctional(header) || (header[1] & 0xFF) == unit.node()) {
        frames.addAll(answer(unit, payload, isFunctional(header), sent));
      }
    }
    frames.sort(Comparator.comparingLong(Frame::nanos));
    lastEnd = frames.isEmpty() ? sent : frames.getLast().nanos();
    return frames;
  }

  private boolean isFunctional(byte[] header) {
    return header.length != 3 || header[1] == (byte) (protocol.isIso14230() ? 0x33 : 0x6A);
  }

  private List<Frame> answer(ControlUnit unit, byte[] request, boolean isFunctional, long sent) {
    List<Frame> frames = new ArrayList<>();
    long at = sent + times.next(unit);
    for (byte[] data : dialect.answer(unit, request, isFunctional, sent / NANOS)) {
      at += lasts(OlderFrame.HEADER_BYTES + data.length + 1);
      frames.add(new OlderFrame(at, protocol, join(header(unit, data.length), data)));
      at += BETWEEN_MESSAGES_NANOS;
    }
    return frames;
  }

  /** Sheet of transports, section 3: 48 6B, 41 6B, or 80 and the length; then who answers. */
  private byte[] header(ControlUnit unit, int length) {
    String head =
        switch (protocol) {
          case J1850_PWM -> "416b";
          case J1850_VPW, ISO_9141 -> "486b";
          default -> HEX.toHexDigits((byte) (0x80 | length)) + HEX.toHexDigits((byte) TESTER);
        };
    return HEX.parseHex(head + HEX.toHexDigits((byte) unit.node()));
  }

  private long lasts(int bytes) {
    int bits = protocol.isKLine() ? K_LINE_BITS : 8;
    return (long) (bytes * bits * NANOS / protocol.bitsPerSecond());
  }
}
