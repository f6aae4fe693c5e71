package steadypull.demo.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** The vehicle's CAN bus, 11 bits, 500 kbit/s: carries a request to the control units and back. */
final class VehicleBus {
  static final int EVERYBODY = 0x7DF;

  private static final long QUICKEST_ANSWER_NANOS = 5_000_000;
  private static final int ANSWER_SPREAD_NANOS = 9_000_000; // P2 is 50 ms at most, ISO 15765-4
  private static final long GEARBOX_LATER_NANOS = 4_000_000;
  private static final long PENDING_NANOS = 300_000_000;
  private static final double NANOS = 1e9;

  private final BenchVehicle vehicle;
  private final BenchSettings settings;
  private final Random answerTimes;

  VehicleBus(BenchVehicle vehicle, BenchSettings settings) {
    this.vehicle = vehicle;
    this.settings = settings;
    answerTimes = new Random(settings.seed() * 31 + 7);
  }

  boolean isAwake(long nanos) {
    return vehicle.isAwake(nanos / NANOS);
  }

  /**
   * Sends a request and lists the frames that come back, first frame first; none if nobody answers.
   */
  List<Frame> request(int address, byte[] payload, long nanos) {
    List<Frame> frames = new ArrayList<>();
    if (payload.length == 0 || !isAwake(nanos)) {
      return frames;
    }
    vehicle.advanceTo(nanos / NANOS);
    for (ControlUnit unit : vehicle.controlUnits()) {
      if (address == EVERYBODY || address == unit.requestAddress()) {
        frames.addAll(answer(unit, address, payload, nanos));
      }
    }
    frames.sort(Comparator.comparingLong(Frame::nanos));
    return frames;
  }

  private List<Frame> answer(ControlUnit unit, int address, byte[] payload, long nanos) {
    Optional<byte[]> answer = unit.answer(payload, address == EVERYBODY);
    if (answer.isEmpty()) {
      return List.of();
    }
    int identifier = unit.requestAddress() + 8;
    long at = nanos + answerTime(unit);
    List<Frame> frames = new ArrayList<>();
    if (payload[0] == 0x22 && settings.has(Fault.Kind.PENDING, nanos / NANOS)) {
      byte[] pending = {0x7F, 0x22, (byte) Services.RESPONSE_PENDING};
      frames.addAll(Frame.segment(pending, identifier, at));
      at += PENDING_NANOS;
    }
    frames.addAll(Frame.segment(answer.get(), identifier, at));
    return frames;
  }

  private long answerTime(ControlUnit unit) {
    long drawn = QUICKEST_ANSWER_NANOS + answerTimes.nextInt(ANSWER_SPREAD_NANOS);
    return unit.requestAddress() == 0x7E0 ? drawn : drawn + GEARBOX_LATER_NANOS;
  }
}
