package steadypull.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import org.jdbi.v3.core.result.ResultIterable;
import steadypull.store.column.DamagedSegmentException;
import steadypull.store.column.Segment;
import steadypull.store.column.SegmentBuilder;

/** The segments of one trip as rows, inside somebody else's transaction. */
final class SegmentRows {
  /** What one of them cannot reach for damage another may. */
  private static final List<String> OTHER_WAYS =
      List.of(
          "selectSegmentsFromEnd",
          "sqlite.selectSegmentsUnindexed",
          "sqlite.selectSegmentsUnindexedFromEnd");

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
        .map((row, context) -> place(row))
        .list();
  }

  /** In the order of acceptance; of a damaged library those that it still gives. */
  List<Place> readablePlaces(Handle handle) {
    ReadableRows rows = new ReadableRows(handle, tripKey);
    List<Place> found = rows.upToDamage("selectSegments", SegmentRows::place);
    if (!rows.isCutOff()) {
      return found;
    }
    SortedMap<Long, Place> byFirstSample = new TreeMap<>();
    found.forEach(place -> byFirstSample.put(place.firstSample, place));
    for (String statement : OTHER_WAYS) {
      rows.upToDamage(statement, SegmentRows::place)
          .forEach(place -> byFirstSample.putIfAbsent(place.firstSample, place));
    }
    return List.copyOf(byFirstSample.values());
  }

  private static Place place(ResultSet row) throws SQLException {
    return new Place(
        row.getLong("first_sample"),
        row.getInt("sample_count"),
        row.getLong("first_micros"),
        row.getLong("last_micros"));
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

  /** What can be read of the segment of that place; empty if nothing can, or if it is another. */
  Optional<Segment> readableSegment(Handle handle, Place place) {
    try {
      return Optional.of(Segment.decodeReadable(readableBytes(handle, place)))
          .filter(segment -> segment.size() == place.sampleCount);
    } catch (DamagedSegmentException e) {
      // Told by whoever finds the samples missing.
      return Optional.empty();
    }
  }

  /** The segment of that place as bytes; none where the library is damaged. */
  byte[] readableBytes(Handle handle, Place place) {
    return ifReadable(() -> samples(handle, place));
  }

  /** What {@link #overview} gives; no bytes where the library is damaged. */
  byte[] readableOverview(Handle handle, Place place) {
    return ifReadable(() -> overview(handle, place));
  }

  private static byte[] ifReadable(Supplier<byte[]> read) {
    try {
      return read.get();
    } catch (JdbiException e) {
      if (LibraryFault.isDamage(e)) {
        return new byte[0];
      }
      throw e;
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

  /** The segments of places that follow one another, as bytes, in their order. */
  List<byte[]> samples(Handle handle, List<Place> places) {
    Map<Long, byte[]> found = between(handle, "selectSegmentsBetween", places);
    List<byte[]> segments = new ArrayList<>();
    for (Place place : places) {
      byte[] kept = found.get(place.firstSample);
      segments.add(kept == null ? samples(handle, place) : kept);
    }
    return segments;
  }

  /** Their overviews; see {@link #overview}. */
  List<byte[]> overviews(Handle handle, List<Place> places) {
    Map<Long, byte[]> found = between(handle, "selectOverviewsBetween", places);
    List<byte[]> overviews = new ArrayList<>();
    for (Place place : places) {
      byte[] kept = found.get(place.firstSample);
      overviews.add(kept == null ? overview(handle, place) : kept);
    }
    return overviews;
  }

  private Map<Long, byte[]> between(Handle handle, String statement, List<Place> places) {
    Map<Long, byte[]> found = new HashMap<>();
    handle
        .createQuery(Sql.of(statement))
        .bind("tripKey", tripKey)
        .bind("from", places.getFirst().firstSample)
        .bind("to", places.getLast().firstSample)
        .map((row, context) -> found.put(row.getLong("first_sample"), row.getBytes("bytes")))
        .list();
    return found;
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
