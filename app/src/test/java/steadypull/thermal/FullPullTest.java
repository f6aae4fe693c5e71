package steadypull.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.LatestSamples;

class FullPullTest {
  // P = T n / 9549.3: 0.84 * 800 = 672 N.m are 103.4 kW at 1470 r/min and 130 kW at 1847 r/min.
  @Test
  void morePowerThanAGearGivesIsGivenInALowerOne() {
    FullPull pull = new FullPull();
    LatestSamples samples = new LatestSamples();
    samples.accept(new Sample(Channels.REFERENCE_TORQUE, 0, 800));
    pull.accept(samples, 1_000_000, 60, 1470, false, 1);
    assertThat(pull.rpmFor(90, 1470)).isEqualTo(1470);
    assertThat(pull.rpmFor(130, 1470)).isCloseTo(1847.3, within(0.5));
  }
}
