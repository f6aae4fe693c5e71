package steadypull.store.column;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Reads the parts of a segment one by one. One thread. */
final class SegmentReading implements AutoCloseable {
  private final byte[] bytes;
  private final SegmentHead head;
  private final SeriesReader series = new SeriesReader();

  SegmentReading(byte[] bytes) throws DamagedSegmentException {
    this.bytes = bytes;
    this.head = SegmentHead.read(bytes);
  }

  /** Everything, or nothing if any of it is damaged. */
  Segment whole() throws DamagedSegmentException {
    head.requireEnd(bytes);
    @Nullable Timeline[] timelines = new Timeline[head.stretches().size()];
    for (int number = 0; number < timelines.length; number++) {
      timelines[number] = timeline(number);
    }
    List<Optional<double[]>> values = new ArrayList<>();
    for (int place = 0; place < head.channels().length; place++) {
      values.add(Optional.of(values(place)));
    }
    return new Segment(head, timelines, values);
  }

  /** Everything that can be read. */
  Segment readable() throws DamagedSegmentException {
    @Nullable Timeline[] timelines = new Timeline[head.stretches().size()];
    Arrays.setAll(timelines, this::timelineIfReadable);
    List<Optional<double[]>> values =
        IntStream.range(0, head.channels().length).mapToObj(this::valuesIfReadable).toList();
    return new Segment(head, timelines, values);
  }

  private Timeline timeline(int number) throws DamagedSegmentException {
    series.begin(head.stretch(bytes, number));
    Timeline timeline = Timeline.read(series, head.channels().length);
    series.requireEnd();
    head.stretches().get(number).require(timeline);
    return timeline;
  }

  private double[] values(int place) throws DamagedSegmentException {
    series.begin(head.column(bytes, place));
    double[] values = ValueSeries.read(series, head.samples(place));
    series.requireEnd();
    return values;
  }

  private @Nullable Timeline timelineIfReadable(int number) {
    try {
      return timeline(number);
    } catch (DamagedSegmentException e) {
      // Told by Segment.lost().
      return null;
    }
  }

  private Optional<double[]> valuesIfReadable(int place) {
    try {
      return Optional.of(values(place));
    } catch (DamagedSegmentException e) {
      // Told by Segment.lost().
      return Optional.empty();
    }
  }

  @Override
  public void close() {
    series.close();
  }
}
