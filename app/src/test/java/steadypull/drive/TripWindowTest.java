package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The window of a trip comes closer, steps back and moves, and never leaves the trip. */
class TripWindowTest {
  private static final TripWindow WHOLE = new TripWindow(0, 3_600_000_000L);

  @Test
  void thePlaceUnderTheFingerStandsStill() {
    TripWindow closer = WHOLE.magnified(4, 0.25, WHOLE);

    assertThat(closer).isEqualTo(new TripWindow(675_000_000, 1_575_000_000));
    // A quarter of each: 900 s after the start.
    assertThat(closer.fromMicros() + closer.widthMicros() / 4).isEqualTo(900_000_000);
    assertThat(closer.magnified(0.25, 0.25, WHOLE)).isEqualTo(WHOLE);
  }

  @Test
  void movingEndsWhereTheTripEnds() {
    TripWindow middle = WHOLE.magnified(4, 0.5, WHOLE);

    assertThat(middle.moved(0.5, WHOLE).fromMicros() - middle.fromMicros()).isEqualTo(450_000_000);
    assertThat(middle.moved(9, WHOLE).toMicros()).isEqualTo(WHOLE.toMicros());
    assertThat(middle.moved(-9, WHOLE).fromMicros()).isZero();
  }

  @Test
  void whateverIsDoneTheWindowStaysInTheTripAndHasAWidth() {
    SplittableRandom random = new SplittableRandom(3);
    TripWindow shortTrip = new TripWindow(0, 1_000);
    for (TripWindow limits : new TripWindow[] {WHOLE, shortTrip}) {
      TripWindow window = limits;
      for (int step = 0; step < 2_000; step++) {
        window =
            random.nextBoolean()
                ? window.magnified(Math.exp(random.nextDouble(-2, 2)), random.nextDouble(), limits)
                : window.moved(random.nextDouble(-2, 2), limits);
        assertThat(window.fromMicros()).isNotNegative();
        assertThat(window.toMicros()).isLessThanOrEqualTo(limits.toMicros());
        assertThat(window.widthMicros())
            .isGreaterThanOrEqualTo(Math.min(2_000_000, limits.widthMicros()));
      }
    }
  }

  @Test
  void aWindowWithoutWidthIsRefused() {
    assertThatThrownBy(() -> new TripWindow(5, 5)).isInstanceOf(IllegalArgumentException.class);
  }
}
