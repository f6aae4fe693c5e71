package steadypull.demo.bench;

import static steadypull.demo.bench.Parameters.join;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;

/**
 * The plug in the vehicle: its bus, as an AT-command adapter uses it, and its supply. Moments on
 * the bench's clock.
 */
final class VehicleBus {
  private static final int FRAME_BITS = 150; // 8 data bytes with stuffing and what stands between
  private static final int PRIORITY = 0x18000000;
  private static final long FLOW_CONTROL_NANOS = 800_000;
  private static final byte[] GO_ON = {0x30, 0, 0, 0, 0, 0, 0, 0};
  private static final double NANOS = 1e9;

  private final BenchVehicle vehicle;
  private final CanBus can;
  private final OlderBus older;
  private long sentNanos;

  VehicleBus(BenchSettings settings) {
    vehicle = new BenchVehicle(settings);
    can = new CanBus(vehicle, settings);
    older = new OlderBus(vehicle, settings);
  }

  BusProtocol protocol() {
    return vehicle.traits().protocol();
  }

  boolean isAwake(long nanos) {
    return vehicle.isAwake(nanos / NANOS);
  }

  /** Whether a search finds this vehicle: searches ask 01 00, which not every vehicle answers. */
  boolean isFound(long nanos) {
    return isAwake(nanos) && !vehicle.traits().isUds();
  }

  boolean isRunning(long nanos) {
    return vehicle.isRunning(nanos / NANOS);
  }

  double supplyVolts(long nanos) {
    return vehicle.supplyVolts(nanos / NANOS);
  }

  CanBus can() {
    return can;
  }

  OlderBus older() {
    return older;
  }

  /** When the last request had gone; patience counts from there. */
  long sentNanos() {
    return sentNanos;
  }

  /** Sends a request the way a mode says; the frames that come back, first first. */
  List<Frame> exchange(AdapterMode mode, byte[] payload, long nanos) {
    if (!protocol().isCan()) {
      byte[] header = HexFormat.of().parseHex(mode.olderHeader());
      sentNanos = older.sending(payload, nanos);
      return older.exchange(header, payload, sentNanos);
    }
    List<Frame> frames = new ArrayList<>();
    for (CanFrame frame : can.hear(request(mode, payload, nanos))) {
      frames.add(frame);
      if (frame.isFirstOfSeveral() && mode.flowControl) {
        int sender = can.addressing().requestToSenderOf(frame.identifier());
        long at = frame.nanos() + FLOW_CONTROL_NANOS;
        frames.addAll(can.hear(new CanFrame(at, sender, GO_ON)));
      }
    }
    frames.sort(Comparator.comparingLong(Frame::nanos));
    return frames;
  }

  private CanFrame request(AdapterMode mode, byte[] payload, long nanos) {
    sentNanos = nanos + (long) (FRAME_BITS * NANOS / protocol().bitsPerSecond());
    byte[] length = {(byte) payload.length};
    return new CanFrame(sentNanos, identifier(mode), join(length, payload));
  }

  private int identifier(AdapterMode mode) {
    CanAddressing addressing = can.addressing();
    return mode.header
        .map(digits -> Integer.parseInt(digits, 16))
        .map(header -> addressing.isLong() ? PRIORITY | header : header & 0x7FF)
        .orElse(addressing.everybody());
  }
}
