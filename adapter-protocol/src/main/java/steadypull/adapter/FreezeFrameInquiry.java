package steadypull.adapter;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import steadypull.adapter.diagnostic.FreezeFrame;
import steadypull.adapter.diagnostic.Maxima;
import steadypull.adapter.diagnostic.Parameter;
import steadypull.adapter.diagnostic.ParameterTable;
import steadypull.adapter.diagnostic.SignalValue;
import steadypull.adapter.diagnostic.SupportMap;
import steadypull.adapter.diagnostic.TroubleCode;
import steadypull.adapter.frame.Message;
import steadypull.adapter.frame.Payload;

/**
 * Asks for the freeze frames: first which code stored one, then which parameters it holds, then for
 * each that the table knows. All control units with a frame answer together. Reader thread only.
 */
final class FreezeFrameInquiry implements Inquiry {
  private static final int LAST_MAP = 0xE0;

  private final VehicleKnowledge vehicle;
  private final Map<String, Frame> frames = new TreeMap<>();
  private final Deque<Integer> left = new ArrayDeque<>(List.of(FreezeFrame.CODE_PARAMETER));

  /** What one control unit's frame holds, as far as it was asked for. */
  private static final class Frame {
    final TroubleCode code;
    final List<SignalValue> values = new ArrayList<>();
    SupportMap support = SupportMap.empty();

    Frame(TroubleCode code) {
      this.code = code;
    }
  }

  FreezeFrameInquiry(VehicleKnowledge vehicle) {
    this.vehicle = vehicle;
  }

  @Override
  public Optional<String> request() {
    return Optional.ofNullable(left.peek()).map(FreezeFrame::request);
  }

  @Override
  public void take(List<Message> messages) {
    int parameter = left.remove();
    if (parameter == FreezeFrame.CODE_PARAMETER) {
      takeCodes(messages);
    } else {
      data(parameter, messages).forEach((unit, bytes) -> takeData(parameter, unit, bytes));
      if (SupportMap.isMap(parameter)) {
        goOnAfterMap(parameter);
      }
    }
  }

  private void takeCodes(List<Message> messages) {
    for (Message message : messages) {
      FreezeFrame.code(message.payload())
          .ifPresent(code -> frames.putIfAbsent(message.controlUnit(), new Frame(code)));
    }
    if (!frames.isEmpty()) {
      left.add(0);
    }
  }

  /** What the control units with a frame answered for a parameter. */
  private Map<String, Payload> data(int parameter, List<Message> messages) {
    Map<String, Payload> data = new HashMap<>();
    for (Message message : messages) {
      if (frames.containsKey(message.controlUnit())) {
        FreezeFrame.data(parameter, message.payload())
            .ifPresent(bytes -> data.putIfAbsent(message.controlUnit(), bytes));
      }
    }
    return data;
  }

  private void takeData(int parameter, String unit, Payload bytes) {
    Frame frame = frames.get(unit);
    if (frame == null) {
      return;
    }
    if (SupportMap.isMap(parameter)) {
      frame.support = frame.support.with(parameter, bytes);
    } else {
      Maxima maxima = vehicle.findUnit(unit).map(ControlUnit::maxima).orElse(Maxima.none());
      ParameterTable.find(parameter)
          .ifPresent(known -> frame.values.addAll(known.decode(bytes, maxima)));
    }
  }

  /** The next map where there is one, else the values. */
  private void goOnAfterMap(int map) {
    int next = map + SupportMap.STRIDE;
    if (next <= LAST_MAP && isHeld(next)) {
      left.add(next);
    } else {
      frames.forEach(this::supposeWithoutMaps);
      ParameterTable.all().stream().map(Parameter::number).filter(this::isHeld).forEach(left::add);
    }
  }

  /** A control unit that tells no maps of its frame may hold what it can tell at present. */
  private void supposeWithoutMaps(String unit, Frame frame) {
    if (frame.support.equals(SupportMap.empty())) {
      vehicle.findUnit(unit).ifPresent(known -> frame.support = known.support());
    }
  }

  private boolean isHeld(int parameter) {
    return frames.values().stream().anyMatch(frame -> frame.support.supports(parameter));
  }

  @Override
  public Optional<Inquiry> finish(ReaderListener listener, long nanoTime) {
    frames.forEach(
        (unit, frame) ->
            listener.freezeFrame(new FreezeFrame(unit, frame.code, frame.values), nanoTime));
    return Optional.empty();
  }
}
