package steadypull.store.column;

import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.zip.Deflater;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Prints how fast segments are packed, unpacked and drawn, in processor time of one thread: {@code
 * mvn -q -Pbench}. Beside packing stands the plain way, rows deflated; beside drawing, a walk
 * through all samples in memory.
 */
@Tag("bench")
class LinesBenchTest {
  private static final int SEGMENT_SAMPLES = 32_768;
  private static final int COLUMNS = 1280;
  private static final int CHANNELS = 20;
  private static final long HOUR_MICROS = 3_600_000_000L;

  private interface Work {
    void run() throws DamagedSegmentException;
  }

  @Test
  void printPaces() throws DamagedSegmentException {
    for (MeasuredTrips trips :
        new MeasuredTrips[] {PolledTrips.polled(1, 120), PolledTrips.even(2)}) {
      int[] samples = new int[1];
      SegmentList[] packed = new SegmentList[1];
      trips.tell(0, (channel, timeMicros, value) -> samples[0]++);
      double told = least(5, () -> trips.tell(0, (channel, timeMicros, value) -> {}));
      double packing =
          least(
              5,
              () -> {
                packed[0] = new SegmentList(SEGMENT_SAMPLES);
                trips.tell(0, packed[0]::add);
                packed[0].finish();
              });
      double unpacking = least(20, () -> unpack(packed[0]));
      double copying = least(3, () -> deflateRows(trips)) - told;
      System.out.printf(
          Locale.ROOT,
          "%n%s: packed with overview %.2f M samples/s (rows deflated: %.2f), unpacked %.1f%n",
          trips.name(),
          samples[0] / (packing - told) / 1e6,
          samples[0] / copying / 1e6,
          samples[0] / unpacking / 1e6);
    }
  }

  @Test
  void printLines() throws DamagedSegmentException {
    MeasuredTrips trips = PolledTrips.even(10);
    SegmentList segments = new SegmentList(SEGMENT_SAMPLES);
    trips.tell(0, segments::add);
    segments.finish();
    System.out.printf(Locale.ROOT, "%n10 h, %d channels at 5 Hz, %d columns%n", CHANNELS, COLUMNS);
    double[] openings = new double[15];
    for (int i = 0; i < openings.length; i++) {
      TripLines lines = new TripLines(segments);
      openings[i] = seconds(() -> draw(lines, 0, 10 * HOUR_MICROS));
    }
    System.out.printf(
        Locale.ROOT,
        "opened whole: first %.1f ms, then median %.1f ms%n",
        1000 * openings[0],
        1000 * median(openings));
    printWalk(segments);
    printZooms(segments);
  }

  private static void printWalk(SegmentList segments) throws DamagedSegmentException {
    List<Segment> all = new ArrayList<>();
    for (int number = 0; number < segments.count(); number++) {
      all.add(Segment.decode(segments.segment(number)));
    }
    double[] walks = new double[5];
    for (int i = 0; i < walks.length; i++) {
      walks[i] = seconds(() -> walk(all));
    }
    System.out.printf(Locale.ROOT, "a walk through all samples: %.1f ms%n", 1000 * median(walks));
  }

  private static void walk(List<Segment> segments) throws DamagedSegmentException {
    PixelWindow window = new PixelWindow(0, 10 * HOUR_MICROS, COLUMNS);
    for (int channel = 0; channel < CHANNELS; channel++) {
      PixelLine line = new PixelLine(COLUMNS);
      for (Segment segment : segments) {
        Column column = segment.column(channel);
        for (int i = 0; i < column.size(); i++) {
          int pixels = window.column(column.timeMicros(i));
          line.addFirst(pixels, column.timeMicros(i), column.value(i));
          line.addLast(pixels, column.timeMicros(i), column.value(i));
        }
      }
    }
  }

  private static void printZooms(SegmentList segments) throws DamagedSegmentException {
    SplittableRandom random = new SplittableRandom(3);
    TripLines lines = new TripLines(segments);
    draw(lines, 0, 10 * HOUR_MICROS);
    for (long minutes : new long[] {1, 5, 20, 60, 84, 90, 180, 360}) {
      double[] zooms = new double[25];
      for (int i = 0; i < zooms.length; i++) {
        long width = minutes * HOUR_MICROS / 60;
        long from = random.nextLong(10 * HOUR_MICROS - width);
        zooms[i] = seconds(() -> draw(lines, from, from + width));
      }
      System.out.printf(
          Locale.ROOT,
          "window of %3d min anywhere: median %.1f ms, worst %.1f ms%n",
          minutes,
          1000 * median(zooms),
          1000 * Arrays.stream(zooms).max().orElseThrow());
    }
  }

  private static void draw(TripLines lines, long from, long to) {
    for (int channel = 0; channel < CHANNELS; channel++) {
      lines.line(channel, from, to, COLUMNS);
    }
  }

  private static void unpack(SegmentList segments) throws DamagedSegmentException {
    for (int number = 0; number < segments.count(); number++) {
      Segment.decode(segments.segment(number));
    }
  }

  /** The plain way: channel, time and value of each sample one after the other, deflated. */
  private static void deflateRows(MeasuredTrips trips) {
    ByteBuffer rows = ByteBuffer.allocate(20 * SEGMENT_SAMPLES);
    byte[] room = new byte[rows.capacity()];
    Deflater deflater = new Deflater();
    trips.tell(
        0,
        (channel, timeMicros, value) -> {
          rows.putInt(channel).putLong(timeMicros).putDouble(value);
          if (!rows.hasRemaining()) {
            deflater.reset();
            deflater.setInput(rows.array());
            deflater.finish();
            deflater.deflate(room);
            rows.clear();
          }
        });
    deflater.end();
  }

  private static double least(int rounds, Work work) throws DamagedSegmentException {
    double least = Double.POSITIVE_INFINITY;
    for (int round = 0; round < rounds; round++) {
      least = Math.min(least, seconds(work));
    }
    return least;
  }

  private static double median(double[] seconds) {
    return Arrays.stream(seconds).sorted().toArray()[seconds.length / 2];
  }

  private static double seconds(Work work) throws DamagedSegmentException {
    long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    work.run();
    return (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before) / 1e9;
  }
}
