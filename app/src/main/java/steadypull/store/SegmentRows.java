package steadypull.store;

import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.result.ResultIterable;
import steadypull.store.column.DamagedSegmentException;
import steadypull.store.column.Segment;
import steadypull.store.column.SegmentBuilder;

/** The segments of one trip as rows, inside somebody else's transaction. */
final class SegmentRows {
  private final long tripKey;

  SegmentRows(long tripKey) {
    this.tripKey = tripKey;
  }

  /** Where a segment lies: sample numbers count from the start of the trip. */
  record Place(long firstSample, int sampleCount, long firstMicros, long lastMicros) {}

  /** In the order of acceptance. */
  List<Place> places(Handle handle) {
    return handle
        .createQuery(Sql.of("selectSegments"))
        .bind("tripKey", tripKey)
        .map(
            (row, context) ->
                new Place(
                    row.getLong("first_sample"),
                    row.getInt("sample_count"),
                    row.getLong("first_micros"),
                    row.getLong("last_micros")))
        .list();
  }

  /** Adds a segment. */
  void insert(Handle handle, long firstSample, SegmentBuilder samples) {
    handle
        .createUpdate(Sql.of("insertSegment"))
        .bind("tripKey", tripKey)
        .bind("firstSample", firstSample)
        .bind("sampleCount", samples.size())
        .bind("firstMicros", samples.firstMicros())
        .bind("lastMicros", samples.lastMicros())
        .bind("samples", samples.encode())
        .execute();
  }

  /** Adds a segment and its overview. */
  void insertLong(Handle handle, long firstSample, SegmentBuilder samples) {
    insert(handle, firstSample, samples);
    handle
        .createUpdate(Sql.of("insertOverview"))
        .bind("tripKey", tripKey)
        .bind("firstSample", firstSample)
        .bind("buckets", samples.encodeOverview())
        .execute();
  }

  void deleteFrom(Handle handle, long firstSample) {
    handle
        .createUpdate(Sql.of("deleteSegmentsFrom"))
        .bind("tripKey", tripKey)
        .bind("firstSample", firstSample)
        .execute();
  }

  /** The segment of that place, as bytes. */
  byte[] samples(Handle handle, Place place) {
    return blob(handle, "selectSegment", place.firstSample);
  }

  /** The segment of that place. */
  Segment segment(Handle handle, Place place) {
    try {
      Segment segment = Segment.decode(samples(handle, place));
      if (segment.size() != place.sampleCount) {
        throw new DamagedTripException(
            "expected %d samples, found %d".formatted(place.sampleCount, segment.size()));
      }
      return segment;
    } catch (DamagedSegmentException e) {
      throw new DamagedTripException(String.valueOf(e.getMessage()), e);
    }
  }

  /** What a coarse drawing needs of a segment; made anew of one that has no overview beside it. */
  byte[] overview(Handle handle, Place place) {
    return query(handle, "selectOverview", place.firstSample)
        .findOne()
        .orElseGet(
            () -> {
              SegmentBuilder samples = new SegmentBuilder();
              segment(handle, place).forEach(samples::add);
              return samples.encodeOverview();
            });
  }

  private byte[] blob(Handle handle, String statement, long firstSample) {
    return query(handle, statement, firstSample)
        .findOne()
        .orElseThrow(() -> new DamagedTripException("expected a segment, found none"));
  }

  private ResultIterable<byte[]> query(Handle handle, String statement, long firstSample) {
    return handle
        .createQuery(Sql.of(statement))
        .bind("tripKey", tripKey)
        .bind("firstSample", firstSample)
        .mapTo(byte[].class);
  }
}
