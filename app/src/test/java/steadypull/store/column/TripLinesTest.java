package steadypull.store.column;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
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

  /** What lies beside a window is told by the overviews of the segments there. */
  @Test
  void aWindowOfOneSegmentUnpacksNoOther() {
    CountedSegments segments = new CountedSegments(wave(12_000, 1000));
    PixelLine line =
        new TripLines(segments).line(1, 500 * SECOND_MICROS, 750 * SECOND_MICROS, 1280);

    assertThat(segments.segmentsRead()).isEqualTo(1);
    assertThat(line.before().orElseThrow().timeMicros()).isEqualTo(499_750_000);
    assertThat(line.after().orElseThrow().timeMicros()).isEqualTo(750 * SECOND_MICROS);
  }

  /** Times go back, stand still and jump: each column is held to a walk through all samples. */
  @Test
  void samplesInAnyOrderAreDrawnLikeOneAfterTheOther() {
    for (long seed = 0; seed < 60; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      SegmentList segments = new SegmentList(20 + random.nextInt(400));
      long[] times = new long[1500];
      double[] values = new double[times.length];
      for (int i = 0; i < times.length; i++) {
        times[i] = (random.nextInt(4) == 0 ? i + random.nextInt(-30, 30) : i / 3 * 3) * 40_000L;
        values[i] = random.nextInt(-20, 20) / 4.0;
        segments.add(3, times[i], values[i]);
      }
      segments.finish();
      long from = random.nextLong(30 * SECOND_MICROS);
      PixelWindow window =
          new PixelWindow(
              from, from + 1 + random.nextLong(30 * SECOND_MICROS), 80 + random.nextInt(900));
      PixelLine line =
          new TripLines(segments).line(3, window.fromMicros(), window.toMicros(), window.columns());

      for (int column = 0; column < window.columns(); column++) {
        assertThat(drawn(line, column))
            .as("seed %d, column %d", seed, column)
            .isEqualTo(walked(times, values, window, column));
      }
    }
  }

  private static List<Double> drawn(PixelLine line, int column) {
    return line.isEmpty(column)
        ? List.of()
        : List.of(line.first(column), line.last(column), line.least(column), line.greatest(column));
  }

  /** First, last, least and greatest value of a column; of equal times the order counts. */
  private static List<Double> walked(
      long[] times, double[] values, PixelWindow window, int column) {
    int[] inside =
        IntStream.range(0, times.length)
            .filter(i -> window.holds(times[i]) && window.column(times[i]) == column)
            .toArray();
    if (inside.length == 0) {
      return List.of();
    }
    int first = inside[0];
    int last = inside[0];
    for (int i : inside) {
      first = times[i] < times[first] ? i : first;
      last = times[i] >= times[last] ? i : last;
    }
    return List.of(
        values[first],
        values[last],
        IntStream.of(inside).mapToDouble(i -> values[i]).min().orElseThrow(),
        IntStream.of(inside).mapToDouble(i -> values[i]).max().orElseThrow());
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

  /** Known at once without reading, never false: each sample lies between the bounds. */
  @Test
  void whatIsKnownWithoutSamplesHoldsTheLineBetweenItsBounds() {
    for (long seed = 0; seed < 10; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      SegmentList polled = new SegmentList(500 + random.nextInt(3000));
      int count = 20_000;
      long[] times = new long[count];
      double[] values = new double[count];
      for (int i = 0; i < count; i++) {
        // A silence of ten minutes in the middle.
        times[i] = 250_000L * i + random.nextLong(100_000) + (i > count / 2 ? 600_000_000L : 0);
        values[i] = random.nextInt(400) == 0 ? 99 : Math.rint(40 * Math.sin(i / 90.0));
        polled.add(1, times[i], values[i]);
      }
      CountedSegments segments = new CountedSegments(polled.finish());
      TripLines lines = new TripLines(segments);
      long end = times[count - 1] + 1;
      lines.line(1, 0, end, 100);
      int read = segments.segmentsRead();
      int overviews = segments.overviewsRead();
      for (int round = 0; round < 20; round++) {
        long from = random.nextLong(end - 4 * SECOND_MICROS);
        long to = from + 2 * SECOND_MICROS + random.nextLong(end - from - 2 * SECOND_MICROS);
        PixelWindow window = new PixelWindow(from, to, 50 + random.nextInt(1300));
        KnownLine known = lines.known(1, from, to, window.columns());
        assertBounded(known.line(), times, values, window);
        assertThat(segments.segmentsRead()).isEqualTo(read);
        assertThat(segments.overviewsRead()).isEqualTo(overviews);
      }
    }
  }

  /** A bucket's edge lies up to one column beside, where columns span buckets. */
  private static void assertBounded(
      PixelLine known, long[] times, double[] values, PixelWindow window) {
    int missed = 0;
    for (int i = 0; i < times.length; i++) {
      if (window.holds(times[i])) {
        int column = window.column(times[i]);
        boolean isHeld =
            holds(known, column - 1, values[i])
                || holds(known, column, values[i])
                || holds(known, column + 1, values[i]);
        missed += isHeld ? 0 : 1;
      }
    }
    assertThat(missed)
        .as("%d columns, %d us", window.columns(), window.toMicros() - window.fromMicros())
        .isZero();
    // No bound is the value of another time: nothing is drawn where nothing came for 10 min.
    long reach = 4 * SECOND_MICROS + (window.toMicros() - window.fromMicros()) / window.columns();
    for (int column = 0; column < known.columns(); column++) {
      if (!known.isEmpty(column)) {
        int next = Arrays.binarySearch(times, window.startMicros(column) - reach);
        int first = next < 0 ? -next - 1 : next;
        assertThat(times[first]).isLessThanOrEqualTo(window.startMicros(column) + reach);
      }
    }
  }

  private static boolean holds(PixelLine line, int column, double value) {
    return column >= 0
        && column < line.columns()
        && !line.isEmpty(column)
        && line.least(column) <= value
        && value <= line.greatest(column);
  }

  @Test
  void whatIsKnownBecomesTheLineOnceSamplesAreThere() {
    CountedSegments segments = new CountedSegments(wave(12_000, 1000));
    TripLines lines = new TripLines(segments);
    long from = 700 * SECOND_MICROS + 1;
    long to = 1100 * SECOND_MICROS;
    assertThat(lines.known(1, from, to, 1280).isExact()).isFalse();
    PixelLine exact = lines.line(1, from, to, 1280);
    KnownLine known = lines.known(1, from, to, 1280);

    assertThat(known.isExact()).isTrue();
    assertThat(known.line().before()).isEqualTo(exact.before()).isPresent();
    assertThat(known.line().after()).isEqualTo(exact.after()).isPresent();
    for (int column = 0; column < 1280; column++) {
      assertThat(drawn(known.line(), column)).isEqualTo(drawn(exact, column));
    }
  }

  /** The window's own segments first, then those beside it; each once. */
  @Test
  void readingAheadBeginsInTheWindowAndEndsWithTheTrip() {
    CountedSegments segments = new CountedSegments(wave(40_000, 1000));
    TripLines lines = new TripLines(segments);
    long from = 5000 * SECOND_MICROS;
    long to = 5500 * SECOND_MICROS;
    assertThat(lines.readAhead(from, to)).isTrue();
    lines.line(1, from, to, 1280);
    assertThat(segments.segmentsRead()).isLessThanOrEqualTo(TripLines.SEGMENTS_AT_A_STEP);

    int steps = 0;
    while (lines.readAhead(from, to)) {
      steps++;
      assertThat(steps).isLessThan(40);
    }
    assertThat(segments.segmentsRead()).isEqualTo(40);
    for (long at = 0; at < 10_000; at += 900) {
      lines.line(1, at * SECOND_MICROS, (at + 900) * SECOND_MICROS, 1280);
    }
    assertThat(lines.examine()).isFalse();
    assertThat(segments.segmentsRead()).isEqualTo(40);
  }

  @Test
  void whatWasNotDrawnIsExaminedStepByStep() {
    CountedSegments segments = new CountedSegments(wave(20_000, 1000));
    segments.damageSegment(13);
    TripLines lines = new TripLines(segments);
    int steps = 1;
    while (lines.examine()) {
      steps++;
    }

    assertThat(steps).isEqualTo(4);
    assertThat(segments.segmentsRead()).isEqualTo(20);
    assertThat(lines.state(13).orElseThrow().lost())
        .extracting(LostSamples::samples)
        .containsExactly(1000);
    assertThat(lines.state(12).orElseThrow().lost()).isEmpty();
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
