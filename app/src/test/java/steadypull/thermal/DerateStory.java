package steadypull.thermal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/** A drive told second by second to a detector: what a channel says holds until it says else. */
final class DerateStory {
  private final DerateDetector detector = new DerateDetector(TestVehicles.heavy());
  private final Map<Channel, Double> says = new LinkedHashMap<>();
  private final List<Derate> said = new ArrayList<>();
  private int second;

  /** Charge air of the given temperature; its limit is 105 degC. */
  DerateStory chargeAir(double celsius) {
    return says(Channels.CHARGE_AIR_TEMP_OUT, celsius);
  }

  DerateStory torque(double demanded, double delivered) {
    return says(Channels.DEMANDED_TORQUE, demanded).says(Channels.DELIVERED_TORQUE, delivered);
  }

  DerateStory pedalAndFuel(double percent, double litresPerHour) {
    return says(Channels.ACCELERATOR_PEDAL, percent).says(Channels.FUEL_RATE, litresPerHour);
  }

  /** In a gear of 25 r/min for each km/h. */
  DerateStory speed(double kilometresPerHour) {
    return says(Channels.VEHICLE_SPEED, kilometresPerHour)
        .says(Channels.ENGINE_SPEED, 25 * kilometresPerHour);
  }

  DerateStory says(Channel channel, double value) {
    says.put(channel, value);
    return this;
  }

  DerateStory forSeconds(int seconds) {
    for (int i = 0; i < seconds; i++) {
      second++;
      says.forEach(
          (channel, value) -> detector.accept(new Sample(channel, second * 1_000_000L, value)));
      said.add(detector.tick(second * 1_000_000L));
    }
    return this;
  }

  /** From what a channel says now evenly to another value. */
  DerateStory to(Channel channel, double value, int seconds) {
    double from = says.getOrDefault(channel, value);
    for (int i = 1; i <= seconds; i++) {
      says(channel, from + (value - from) * i / seconds).forSeconds(1);
    }
    return this;
  }

  int second() {
    return second;
  }

  Derate latest() {
    return said.getLast();
  }

  List<Derate> said() {
    return said;
  }
}
