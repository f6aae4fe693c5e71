package steadypull.store.column;

import java.util.ArrayList;
import java.util.List;

/** Puts the parts of a segment one behind the other, each with its check. One use. */
final class SegmentParts implements AutoCloseable {
  private final SeriesWriter series = new SeriesWriter();
  private final ByteWriter parts = new ByteWriter();
  private final List<Stretch> stretches = new ArrayList<>();
  private final List<Integer> columnOctets = new ArrayList<>();

  /** Adds a stretch; all of them before the first column. */
  void add(Timeline timeline, int[] counts) {
    timeline.write(series);
    stretches.add(Stretch.of(timeline, counts, end()));
  }

  /** Adds the values of a channel. */
  void add(Column column) {
    ValueSeries.write(series, column.values(), column.size());
    columnOctets.add(end());
  }

  /** The whole segment. */
  byte[] finish(int[] channels) {
    ByteWriter out = SegmentFormat.begin(SegmentFormat.SEGMENT);
    int[] octets = columnOctets.stream().mapToInt(Integer::intValue).toArray();
    new SegmentHead(channels, octets, stretches, 0).write(out);
    out.append(parts);
    return out.toByteArray();
  }

  /** How many octets the part has, the check not counted. */
  private int end() {
    int from = parts.size();
    series.finish(parts);
    int octets = parts.size() - from;
    SegmentFormat.writeCheck(parts, from);
    return octets;
  }

  @Override
  public void close() {
    series.close();
  }
}
