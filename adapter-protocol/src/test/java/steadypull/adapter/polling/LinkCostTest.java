package steadypull.adapter.polling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class LinkCostTest {
  private final LinkCost cost = new LinkCost();

  private void take(Random random, int requests, double requestMillis, double lineMillis) {
    for (int i = 0; i < requests; i++) {
      int lines = 1 + random.nextInt(3);
      double jitter = random.nextGaussian();
      cost.took(lines, (long) ((requestMillis + jitter + lineMillis * lines) * 1e6));
    }
  }

  @Test
  void requestAndLineAreToldApartThroughJitter() {
    take(new Random(5), 2_000, 10, 4);

    assertThat(cost.of(1) / 1e6).isCloseTo(14, within(0.5));
    assertThat(cost.of(3) / 1e6).isCloseTo(22, within(0.5));
  }

  @Test
  void linkThatChangesIsLearntAnew() {
    take(new Random(6), 2_000, 10, 4);
    take(new Random(7), 3_000, 30, 1);

    assertThat(cost.of(1) / 1e6).isCloseTo(31, within(1.0));
  }

  @Test
  void costsAreAboveZeroWhateverWasSeen() {
    assertThat(cost.of(1)).isPositive();
    cost.took(1, 50_000_000);
    cost.took(3, 10_000_000);
    cost.took(2, -5);
    cost.took(2, 3_600_000_000_000L);

    assertThat(cost.of(1)).isPositive();
    assertThat(cost.of(5)).isGreaterThanOrEqualTo(cost.of(1));
  }
}
