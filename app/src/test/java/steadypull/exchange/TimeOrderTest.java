package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channel;
import steadypull.channel.Sample;

/** Held to the plainest way there is: sort everything, then move what shares its microsecond. */
class TimeOrderTest {
  private static final int SAMPLES = 3_000;

  /** From a drive in perfect order to one in which nobody comes when due. */
  @ParameterizedTest
  @ValueSource(ints = {1, 3, 40, 2_000})
  void samplesLeaveInTheOrderOfTimeAndThoseOfOneTimeAsTheyCame(int mostLateMicros) {
    SplittableRandom random = new SplittableRandom(mostLateMicros);
    List<Sample> arrived = new ArrayList<>();
    for (int each = 0; each < SAMPLES; each++) {
      long timeMicros = Math.max(0, each / 2 - random.nextInt(mostLateMicros));
      Channel channel = new Channel("own_" + random.nextInt(3), "1");
      arrived.add(new Sample(channel, timeMicros, each));
    }

    List<Sample> left = new ArrayList<>();
    TimeOrder order = new TimeOrder(SAMPLES, left::add);
    arrived.forEach(order::add);
    order.finish();

    assertThat(left).isEqualTo(plainly(arrived));
  }

  private static List<Sample> plainly(List<Sample> arrived) {
    Map<Channel, Long> last = new HashMap<>();
    List<Sample> moved = new ArrayList<>();
    arrived.stream()
        .sorted(Comparator.comparingLong(Sample::timeMicros))
        .forEach(
            sample -> {
              long free = last.getOrDefault(sample.channel(), -1L) + 1;
              long time = Math.max(free, sample.timeMicros());
              last.put(sample.channel(), time);
              moved.add(new Sample(sample.channel(), time, sample.value()));
            });
    moved.sort(Comparator.comparingLong(Sample::timeMicros));
    return moved;
  }
}
