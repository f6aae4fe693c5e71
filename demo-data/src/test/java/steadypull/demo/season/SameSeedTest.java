package steadypull.demo.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;

class SameSeedTest {
  @Test
  void sameSeedGivesTheSameSamplesAndAnotherSeedOthers() {
    for (int index : List.of(1, 7, 17)) {
      assertThat(print(1, index)).isEqualTo(print(1, index)).isNotEqualTo(print(2, index));
    }
  }

  @Test
  void calendarIsTheSameForEverySeed() {
    assertThat(Season.of(1).trips().toString()).isEqualTo(Season.of(99).trips().toString());
  }

  private static long print(long seed, int index) {
    CRC32 sum = new CRC32();
    Season.of(seed)
        .trips()
        .get(index)
        .drive(
            new SeasonSink() {
              @Override
              public void sample(String channelHeader, long timeMicros, double value) {
                add(channelHeader.hashCode());
                add(timeMicros);
                add(Double.doubleToRawLongBits(value));
              }

              @Override
              public void happened(SeasonEvent event) {
                add(event.toString().hashCode());
              }

              private void add(long bits) {
                for (int shift = 0; shift < 64; shift += 8) {
                  sum.update((int) (bits >> shift));
                }
              }
            });
    return sum.getValue();
  }
}
