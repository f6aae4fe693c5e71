package steadypull.drive;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.thermal.Derate;
import steadypull.thermal.DerateDetector;
import steadypull.thermal.OutsidePressure;
import steadypull.vehicle.DerateBegun;
import steadypull.vehicle.TroubleCodes;
import steadypull.vehicle.Vehicle;

/**
 * Where on a finished trip torque began to be taken away at a hot channel. A control unit may begin
 * well below the limit that counts, so every limit is looked for lower here than the drive did. One
 * thread.
 */
final class DerateBeginnings {
  private static final long SECOND_MICROS = 1_000_000;

  /** So far below the limit that counts a control unit may begin (common practice, no source). */
  private static final double LOOKED_FOR_KELVIN = 8;

  /** Of two channels so alike in what is left to their limits nobody can say which it was. */
  private static final double ALIKE_KELVIN = 3;

  /** A derate is known some seconds after it began. */
  private static final int REMEMBERED_SECONDS = 10;

  private final Vehicle vehicle;
  private final DerateDetector detector;
  private final Map<Channel, Double> latest = new HashMap<>();
  private final Map<Channel, Sample> outside = new HashMap<>();
  private final Deque<Map<Channel, Double>> seconds = new ArrayDeque<>();
  private final List<DerateBegun> begun = new ArrayList<>();
  private OptionalLong since = OptionalLong.empty();
  private long nextMicros = SECOND_MICROS;

  DerateBeginnings(Vehicle vehicle) {
    this.vehicle = vehicle;
    this.detector = new DerateDetector(vehicle, LOOKED_FOR_KELVIN);
  }

  void accept(TroubleCodes codes) {
    detector.accept(codes);
  }

  void accept(Sample sample) {
    while (nextMicros <= sample.timeMicros()) {
      second(nextMicros);
      nextMicros += SECOND_MICROS;
    }
    detector.accept(sample);
    if (sample.channel().equals(Channels.BAROMETRIC_PRESSURE)
        || sample.channel().equals(Channels.ALTITUDE)) {
      outside.put(sample.channel(), sample);
    }
    if (vehicle.limit(sample.channel()).isPresent()) {
      latest.put(sample.channel(), sample.value());
    }
  }

  /** Every derate that began, in order. */
  List<DerateBegun> begun() {
    return List.copyOf(begun);
  }

  private void second(long timeMicros) {
    seconds.addLast(Map.copyOf(latest));
    if (seconds.size() > REMEMBERED_SECONDS) {
      seconds.removeFirst();
    }
    switch (detector.tick(timeMicros)) {
      case Derate.Active(Channel cause, long sinceMicros, _, _) -> {
        if (since.isEmpty() || since.getAsLong() != sinceMicros) {
          since = OptionalLong.of(sinceMicros);
          note(cause, (timeMicros - sinceMicros) / SECOND_MICROS);
        }
      }
      case Derate.None _, Derate.PowerLimited _ -> since = OptionalLong.empty();
    }
  }

  private void note(Channel cause, long secondsAgo) {
    List<Map<Channel, Double>> known = List.copyOf(seconds);
    int then = (int) Math.max(0, known.size() - 1 - secondsAgo);
    Map<Channel, Double> celsius = known.get(then);
    Double causing = celsius.get(cause);
    if (causing != null) {
      begun.add(new DerateBegun(cause.id(), causing, alike(cause, causing, celsius)));
    }
  }

  private List<String> alike(Channel cause, double causing, Map<Channel, Double> celsius) {
    double left = headroom(cause, causing).orElse(0);
    return celsius.entrySet().stream()
        .filter(each -> !each.getKey().equals(cause))
        .filter(
            each ->
                headroom(each.getKey(), each.getValue()).orElse(Double.MAX_VALUE)
                    <= left + ALIKE_KELVIN)
        .map(each -> each.getKey().id())
        .sorted()
        .toList();
  }

  /** What is left to the limit that counts here: coolant may boil below the one entered. */
  private OptionalDouble headroom(Channel channel, double celsius) {
    return vehicle
        .limit(channel, OutsidePressure.kilopascals(outside, nextMicros))
        .map(limit -> OptionalDouble.of(limit.celsius() - celsius))
        .orElse(OptionalDouble.empty());
  }
}
