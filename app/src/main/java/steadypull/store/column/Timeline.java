package steadypull.store.column;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * When what arrived in a stretch of a segment. An arrival is a run of samples of the same time, as
 * one answer brings them; its shape is the list of their columns. Polling repeats itself, so there
 * are few shapes.
 *
 * <pre>
 * arrivals  unsigned   how many
 * shapes    unsigned   how many, then a block: for each the number of its columns, and those
 *                      (all unsigned)
 * which     series     the shape of each arrival, see {@link SeriesWriter}
 * times                see {@link ArrivalTimes}
 * </pre>
 */
final class Timeline {
  private final long[] times;
  private final int[] shapeOf;
  private final int[][] shapes;

  private Timeline(long[] times, int[] shapeOf, int[][] shapes) {
    this.times = times;
    this.shapeOf = shapeOf;
    this.shapes = shapes;
  }

  /** The timeline of some samples: those of the numbers from one up to another. */
  static Timeline of(long[] sampleTimes, int[] columns, int first, int end) {
    long[] times = new long[end - first];
    int[] shapeOf = new int[end - first];
    List<int[]> shapes = new ArrayList<>();
    Map<IntBuffer, Integer> known = new HashMap<>();
    int arrivals = 0;
    for (int from = first; from < end; ) {
      int to = from + 1;
      while (to < end && sampleTimes[to] == sampleTimes[from]) {
        to++;
      }
      int[] shape = Arrays.copyOfRange(columns, from, to);
      Integer place = known.putIfAbsent(IntBuffer.wrap(shape), shapes.size());
      if (place == null) {
        place = shapes.size();
        shapes.add(shape);
      }
      times[arrivals] = sampleTimes[from];
      shapeOf[arrivals++] = place;
      from = to;
    }
    return new Timeline(
        Arrays.copyOf(times, arrivals),
        Arrays.copyOf(shapeOf, arrivals),
        shapes.toArray(int[][]::new));
  }

  int arrivals() {
    return times.length;
  }

  long timeMicros(int arrival) {
    return times[arrival];
  }

  /** The columns of an arrival's samples; not to be changed. */
  int[] shape(int arrival) {
    return shapes[shapeOf[arrival]];
  }

  long firstMicros() {
    long first = times[0];
    for (long timeMicros : times) {
      first = Math.min(first, timeMicros);
    }
    return first;
  }

  long lastMicros() {
    long last = times[0];
    for (long timeMicros : times) {
      last = Math.max(last, timeMicros);
    }
    return last;
  }

  /** How many samples each column has; all of them together are not more than a segment holds. */
  int[] counts(int columns) throws DamagedSegmentException {
    int[] counts = new int[columns];
    int[] occurrences = occurrences();
    long samples = 0;
    for (int place = 0; place < shapes.length; place++) {
      samples += (long) occurrences[place] * shapes[place].length;
      if (samples > SegmentFormat.MOST_SAMPLES) {
        throw new DamagedSegmentException(
            "at most " + SegmentFormat.MOST_SAMPLES + " samples", "more");
      }
      for (int column : shapes[place]) {
        counts[column] += occurrences[place];
      }
    }
    return counts;
  }

  /** How often each shape occurs. */
  private int[] occurrences() {
    int[] occurrences = new int[shapes.length];
    for (int place : shapeOf) {
      occurrences[place]++;
    }
    return occurrences;
  }

  /** Adds the times of each column's samples behind those that are filled in. */
  void fillIn(long[][] columnTimes, int[] filled) {
    for (int arrival = 0; arrival < times.length; arrival++) {
      for (int column : shape(arrival)) {
        columnTimes[column][filled[column]++] = times[arrival];
      }
    }
  }

  void write(SeriesWriter out) {
    out.body().unsigned(times.length);
    out.body().unsigned(shapes.length);
    ByteWriter lists = new ByteWriter();
    for (int[] shape : shapes) {
      lists.unsigned(shape.length);
      for (int column : shape) {
        lists.unsigned(column);
      }
    }
    out.block(lists);
    out.repeating(Arrays.stream(shapeOf).asLongStream().toArray(), shapeOf.length);
    ArrivalTimes.write(out, times, shapeOf);
  }

  static Timeline read(SeriesReader in, int columns) throws DamagedSegmentException {
    int arrivals = in.body().count(SegmentFormat.MOST_SAMPLES, "arrivals");
    atLeastOne(arrivals, "arrivals");
    int[][] shapes = readShapes(in, columns);
    int[] shapeOf = which(in.series(arrivals), shapes.length);
    return new Timeline(ArrivalTimes.read(in, shapeOf), shapeOf, shapes);
  }

  private static int[][] readShapes(SeriesReader in, int columns) throws DamagedSegmentException {
    int count = in.body().count(SegmentFormat.MOST_SAMPLES, "shapes");
    ByteReader lists = in.block();
    List<int[]> shapes = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int columnsOfShape = lists.count(lists.remaining(), "columns of a shape");
      int[] shape = new int[atLeastOne(columnsOfShape, "columns of a shape")];
      for (int place = 0; place < shape.length; place++) {
        shape[place] = lists.count(columns - 1, "as a column's place");
      }
      shapes.add(shape);
    }
    lists.requireEnd();
    return shapes.toArray(int[][]::new);
  }

  private static int atLeastOne(int count, String what) throws DamagedSegmentException {
    if (count == 0) {
      throw new DamagedSegmentException(what, "none");
    }
    return count;
  }

  private static int[] which(long[] read, int shapes) throws DamagedSegmentException {
    int[] which = new int[read.length];
    for (int i = 0; i < which.length; i++) {
      if (read[i] < 0 || read[i] >= shapes) {
        throw new DamagedSegmentException("one of " + shapes + " shapes", "number " + read[i]);
      }
      which[i] = (int) read[i];
    }
    return which;
  }
}
