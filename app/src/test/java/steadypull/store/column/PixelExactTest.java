package steadypull.store.column;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * The line from buckets against the line through every sample, both drawn by a rasteriser that
 * knows neither. The claim is that of Jugel, Jerzak, Hackenbroich and Markl (PVLDB 7(10), 2014):
 * first, last, least and greatest value of each column of pixels are all that a line of one pixel
 * needs.
 */
class PixelExactTest {
  private static final long SECOND_MICROS = 1_000_000;
  private static final long LONGEST_SILENCE_MICROS = 5 * SECOND_MICROS;
  private static final int ROWS = 90;

  private record Sample(long timeMicros, double value) {}

  @Test
  void whereBucketsFallOnPixelsTheLineIsTheLineThroughEverySample() {
    for (long seed = 0; seed < 15; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      List<Sample> samples = series(random);
      TripLines lines = lines(samples, 300 + random.nextInt(3000));
      // 64 s a pixel, a multiple of every bucket of a channel with four samples a second or more.
      for (long pixelSeconds : new long[] {64, 128}) {
        long from = pixelSeconds * random.nextInt(5) * SECOND_MICROS;
        int columns = 20 + random.nextInt(100);
        PixelWindow window =
            new PixelWindow(from, from + columns * pixelSeconds * SECOND_MICROS, columns);

        assertThat(drawn(lines, window)).as("seed " + seed).isEqualTo(expected(samples, window));
      }
    }
  }

  @Test
  void whereAPixelIsNarrowerThanABucketTheLineIsExactAtAnyWindow() {
    for (long seed = 0; seed < 15; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      List<Sample> samples = series(random);
      TripLines lines = lines(samples, 300 + random.nextInt(3000));
      for (int round = 0; round < 10; round++) {
        int columns = 1 + random.nextInt(400);
        long from = random.nextLong(7000 * SECOND_MICROS);
        PixelWindow window =
            new PixelWindow(from, from + columns * (1 + random.nextLong(SECOND_MICROS)), columns);

        assertThat(drawn(lines, window)).as("seed " + seed).isEqualTo(expected(samples, window));
      }
    }
  }

  @Test
  void whereBucketsDoNotFallOnPixelsTheLineLiesAColumnAwayAtMost() {
    for (long seed = 0; seed < 15; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      List<Sample> samples = series(random);
      TripLines lines = lines(samples, 300 + random.nextInt(3000));
      for (int round = 0; round < 10; round++) {
        int columns = 1 + random.nextInt(200);
        long from = random.nextLong(1000 * SECOND_MICROS);
        PixelWindow window =
            new PixelWindow(
                from, from + columns * (4 * SECOND_MICROS + random.nextLong(90_000_000)), columns);
        Raster drawn = drawn(lines, window);
        Raster expected = expected(samples, window);

        assertThat(drawn.isWithinOneColumnOf(expected)).as("seed " + seed + drawn).isTrue();
        assertThat(expected.isWithinOneColumnOf(drawn)).as("seed " + seed + expected).isTrue();
      }
    }
  }

  private static TripLines lines(List<Sample> samples, int samplesOfSegment) {
    SegmentList segments = new SegmentList(samplesOfSegment);
    samples.forEach(sample -> segments.add(4, sample.timeMicros, sample.value));
    return new TripLines(segments.finish());
  }

  /** Two hours with walks, plateaus, spikes of one sample and silences; four to ten a second. */
  private static List<Sample> series(SplittableRandom random) {
    List<Sample> samples = new ArrayList<>();
    long stepMicros = 100_000 + random.nextLong(150_000);
    double value = 50;
    boolean isPlateau = false;
    for (long time = random.nextLong(10 * SECOND_MICROS); time < 7200 * SECOND_MICROS; ) {
      isPlateau = random.nextInt(200) == 0 ? !isPlateau : isPlateau;
      value = isPlateau ? value : Math.clamp(value + random.nextInt(-3, 4), 0, 100);
      boolean isSpike = random.nextInt(700) == 0;
      samples.add(new Sample(time, isSpike ? 100 * random.nextInt(2) : value));
      boolean isSilence = random.nextInt(1500) == 0;
      time += isSilence ? random.nextLong(90 * SECOND_MICROS) : random.nextLong(2 * stepMicros);
    }
    return samples;
  }

  private static Raster drawn(TripLines lines, PixelWindow window) {
    PixelLine line = lines.line(4, window.fromMicros(), window.toMicros(), window.columns());
    Raster raster = raster(window);
    int before = -1;
    for (int column = 0; column < line.columns(); column++) {
      if (line.isEmpty(column)) {
        continue;
      }
      raster.line(
          column, raster.row(line.least(column)), column, raster.row(line.greatest(column)));
      if (before >= 0 && !line.isGapBefore(column, LONGEST_SILENCE_MICROS)) {
        raster.line(before, raster.row(line.last(before)), column, raster.row(line.first(column)));
      }
      before = column;
    }
    return raster;
  }

  /** Every sample joined to the next, unless a silence lies between them that a pixel can show. */
  private static Raster expected(List<Sample> samples, PixelWindow window) {
    Raster raster = raster(window);
    Sample before = null;
    int columnBefore = -1;
    for (Sample sample : samples) {
      if (sample.timeMicros < window.fromMicros() || sample.timeMicros >= window.toMicros()) {
        continue;
      }
      int column = column(sample, window);
      int row = raster.row(sample.value);
      boolean isJoined =
          before != null
              && (column == columnBefore
                  || sample.timeMicros - before.timeMicros <= LONGEST_SILENCE_MICROS);
      if (before != null && isJoined) {
        raster.line(columnBefore, raster.row(before.value), column, row);
      } else {
        raster.line(column, row, column, row);
      }
      before = sample;
      columnBefore = column;
    }
    return raster;
  }

  private static int column(Sample sample, PixelWindow window) {
    double share =
        (sample.timeMicros - window.fromMicros())
            / (double) (window.toMicros() - window.fromMicros());
    return (int) (share * window.columns());
  }

  private static Raster raster(PixelWindow window) {
    return new Raster(window.columns(), ROWS, 0, 100);
  }
}
