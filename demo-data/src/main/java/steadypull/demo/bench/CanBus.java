package steadypull.demo.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The vehicle's CAN bus, frame by frame: hears one frame of a tester and tells the frames that
 * control units send because of it. Long answers go on only when flow control asks for it.
 */
final class CanBus {
  private static final int LONGEST_SINGLE = 7;
  private static final long PENDING_NANOS = 300_000_000;
  private static final double NANOS = 1e9;

  private final BenchVehicle vehicle;
  private final BenchSettings settings;
  private final CanAddressing addressing;
  private final Dialect dialect;
  private final AnswerTimes times;
  private final Filler filler;
  private final FrameFaults faults;
  private final Map<ControlUnit, LongAnswer> unfinished = new HashMap<>();

  CanBus(BenchVehicle vehicle, BenchSettings settings) {
    this.vehicle = vehicle;
    this.settings = settings;
    addressing = new CanAddressing(settings.vehicle().protocol().isLong());
    dialect = Dialect.of(settings.vehicle());
    times = new AnswerTimes(settings);
    filler = new Filler(settings.seed() ^ 0xF111L);
    faults = new FrameFaults(settings);
  }

  CanAddressing addressing() {
    return addressing;
  }

  /** Hears a frame at its moment; the frames that follow from it, first frame first. */
  List<CanFrame> hear(CanFrame frame) {
    double seconds = frame.nanos() / NANOS;
    if (!vehicle.isAwake(seconds)) {
      return List.of();
    }
    vehicle.advanceTo(seconds);
    filler.setUsual(!settings.has(Fault.Kind.PADDING, seconds));
    List<CanFrame> frames = new ArrayList<>();
    for (ControlUnit unit : vehicle.controlUnits(seconds)) {
      boolean isFunctional = frame.identifier() == addressing.everybody();
      if (isFunctional || frame.identifier() == addressing.requestTo(unit)) {
        frames.addAll(hear(unit, frame, isFunctional));
      }
    }
    frames.sort(Comparator.comparingLong(CanFrame::nanos));
    return frames;
  }

  private List<CanFrame> hear(ControlUnit unit, CanFrame frame, boolean isFunctional) {
    return switch (frame.kind()) {
      case 0 -> answer(unit, frame.single(), isFunctional, frame.nanos());
      case 3 ->
          Optional.ofNullable(unfinished.get(unit))
              .map(answer -> answer.obey(frame.data(), frame.nanos()))
              .map(frames -> faults.on(frames, frame.nanos() / NANOS))
              .orElse(List.of());
      default -> List.of();
    };
  }

  private List<CanFrame> answer(
      ControlUnit unit, byte[] request, boolean isFunctional, long nanos) {
    List<byte[]> answers =
        request.length == 0
            ? List.of()
            : dialect.answer(unit, request, isFunctional, nanos / NANOS);
    if (answers.isEmpty()) {
      return List.of();
    }
    List<CanFrame> frames = new ArrayList<>();
    boolean isAtOnce = settings.has(Fault.Kind.INTERLEAVED, nanos / NANOS);
    long at = nanos + (isAtOnce ? times.nextAtOnce(unit) : times.next(unit));
    if (request[0] == 0x22 && settings.has(Fault.Kind.PENDING, nanos / NANOS)) {
      frames.add(begin(unit, Refusal.message(0x22, Refusal.RESPONSE_PENDING), at));
      at += PENDING_NANOS;
    }
    for (byte[] answer : answers) {
      frames.add(begin(unit, answer, at));
    }
    return frames;
  }

  /** A single frame, or the first of several. */
  private CanFrame begin(ControlUnit unit, byte[] answer, long at) {
    int identifier = addressing.answerOf(unit);
    unfinished.remove(unit);
    if (answer.length <= LONGEST_SINGLE) {
      return new CanFrame(at, identifier, filler.filled(answer.length, answer));
    }
    LongAnswer several = new LongAnswer(identifier, answer, filler, at);
    unfinished.put(unit, several);
    return several.first(at);
  }
}
