package steadypull.store.column;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What is told of a trip for drawing it, beyond the line itself. */
class TripLinesTest {
  private static final long SECOND_MICROS = 1_000_000;

  @Test
  void aWindowOfWholeBucketsNeedsNoSamples() {
    CountedSegments segments = new CountedSegments(wave(20_000, 4000));
    TripLines lines = new TripLines(segments);

    // From the start of the trip to after its end: no bucket is cut, nothing lies outside.
    lines.line(1, 0, 6400 * SECOND_MICROS, 100);

    assertThat(segments.segmentsRead()).isZero();
    assertThat(segments.overviewsRead()).isEqualTo(5);
  }

  @Test
  void whatWasUnpackedIsNotReadAgain() {
    CountedSegments segments = new CountedSegments(wave(20_000, 4000));
    TripLines lines = new TripLines(segments);
    for (int round = 0; round < 3; round++) {
      lines.line(1, 100 * SECOND_MICROS, 900 * SECOND_MICROS, 1280);
    }

    assertThat(segments.segmentsRead()).isEqualTo(1);
    assertThat(segments.overviewsRead()).isEqualTo(1);
  }

  /** A spike of one sample somewhere in two hours shows at every width and place of the window. */
  @Test
  void aSpikeOfOneSampleIsNeverLost() {
    SplittableRandom random = new SplittableRandom(8);
    for (int round = 0; round < 200; round++) {
      int spike = random.nextInt(30_000);
      SegmentList segments = new SegmentList(7000);
      for (int i = 0; i < 30_000; i++) {
        segments.add(0, 250_000L * i, i == spike ? 99 : 50);
      }
      long at = 250_000L * spike;
      long from = at - random.nextLong(3600 * SECOND_MICROS);
      long to = at + 1 + random.nextLong(3600 * SECOND_MICROS);
      int columns = 1 + random.nextInt(2000);
      PixelLine line = new TripLines(segments.finish()).line(0, from, to, columns);

      int expected = new PixelWindow(from, to, columns).column(at);
      assertThat(greatestBetween(line, expected - 1, expected + 1))
          .as("round " + round)
          .isEqualTo(99);
    }
  }

  @Test
  void theSamplesBesideTheWindowAreToldHoweverFarAway() {
    SegmentList segments = new SegmentList(100);
    for (int i = 0; i < 1000; i++) {
      segments.add(0, i * SECOND_MICROS, i);
      if (i == 3 || i == 996) {
        segments.add(5, i * SECOND_MICROS + 7, -i);
      }
    }
    PixelLine line =
        new TripLines(segments.finish()).line(5, 400 * SECOND_MICROS, 500 * SECOND_MICROS, 10);

    assertThat(line.before()).contains(new PixelLine.Beside(3 * SECOND_MICROS + 7, -3));
    assertThat(line.after()).contains(new PixelLine.Beside(996 * SECOND_MICROS + 7, -996));
    for (int column = 0; column < line.columns(); column++) {
      assertThat(line.isEmpty(column)).isTrue();
    }
  }

  @Test
  void aWindowBeyondTheTripIsEmpty() {
    PixelLine line = new TripLines(wave(100, 50)).line(1, -50, -10, 4);

    assertThat(line.isEmpty(0)).isTrue();
    assertThat(line.before()).isEmpty();
    assertThat(line.after()).isPresent();
  }

  @Test
  void aDamagedSegmentLeavesItsSpanEmptyAndIsTold() {
    CountedSegments segments = new CountedSegments(wave(4000, 1000));
    segments.damageSegment(2);
    segments.damageOverview(2);
    TripLines lines = new TripLines(segments);
    PixelLine line = lines.line(1, 0, 1000 * SECOND_MICROS, 100);

    assertThat(line.isEmpty(10)).isFalse();
    assertThat(line.isEmpty(60)).isTrue();
    assertThat(line.isEmpty(90)).isFalse();
    assertThat(lines.damaged().stream().boxed()).containsExactly(2);
    assertThat(line.isGapBefore(75, 5 * SECOND_MICROS)).isTrue();
  }

  @Test
  void samplesStandInForADamagedOverview() {
    CountedSegments segments = new CountedSegments(wave(4000, 1000));
    segments.damageOverview(1);
    TripLines lines = new TripLines(segments);
    PixelLine line = lines.line(1, 0, 1024 * SECOND_MICROS, 16);
    PixelLine whole = new TripLines(wave(4000, 1000)).line(1, 0, 1024 * SECOND_MICROS, 16);

    for (int column = 0; column < 16; column++) {
      assertThat(line.greatest(column)).isEqualTo(whole.greatest(column));
      assertThat(line.first(column)).isEqualTo(whole.first(column));
    }
    assertThat(lines.damaged().stream().boxed()).containsExactly(1);
  }

  @Test
  void aWindowWithoutWidthIsRefused() {
    TripLines lines = new TripLines(wave(10, 10));

    assertThatThrownBy(() -> lines.line(1, 5, 5, 10)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> lines.line(1, 0, 5, 0)).isInstanceOf(IllegalArgumentException.class);
  }

  private static double greatestBetween(PixelLine line, int from, int to) {
    double greatest = 0;
    for (int column = Math.max(0, from); column <= Math.min(to, line.columns() - 1); column++) {
      greatest = line.isEmpty(column) ? greatest : Math.max(greatest, line.greatest(column));
    }
    return greatest;
  }

  /** Four samples a second of channel 1. */
  private static SegmentList wave(int samples, int samplesOfSegment) {
    SegmentList segments = new SegmentList(samplesOfSegment);
    for (int i = 0; i < samples; i++) {
      segments.add(1, 250_000L * i, Math.rint(40 * Math.sin(i / 90.0)));
    }
    return segments.finish();
  }
}
