package steadypull.store;

import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.jdbi.v3.core.statement.Query;
import steadypull.store.column.SegmentBuilder;

/**
 * Moves the trips of a library of the second form, one row a sample, into segments. Runs between
 * two scripts, inside one transaction; a trip is not held in memory.
 */
final class OldTrips {
  private OldTrips() {}

  static void moveIntoSegments(Handle handle) {
    List<Long> trips =
        handle.createQuery(Sql.of("sqlite.migration.selectOldTrips")).mapTo(Long.class).list();
    for (long tripKey : trips) {
      handle
          .createUpdate(Sql.of("sqlite.migration.copyOldTrip"))
          .bind("tripKey", tripKey)
          .bind("vehicleKey", TripRow.vehicleKey(handle, vehicleFile(handle, tripKey)))
          .bind("channelKeys", RowText.ofKeys(channelKeys(handle, tripKey)))
          .bind("gaps", RowText.ofGaps(gaps(handle, tripKey)))
          .execute();
      moveSamples(handle, tripKey);
      moveEvents(handle, tripKey);
      TripRow.tellTwice(handle, tripKey);
    }
  }

  private static String vehicleFile(Handle handle, long tripKey) {
    return ofTrip(handle, "selectOldVehicle", tripKey).mapTo(String.class).one();
  }

  private static List<Long> channelKeys(Handle handle, long tripKey) {
    return ofTrip(handle, "selectOldChannels", tripKey).mapTo(Long.class).list();
  }

  private static List<TripTally.GapMicros> gaps(Handle handle, long tripKey) {
    return ofTrip(handle, "selectOldGaps", tripKey)
        .map((row, context) -> new TripTally.GapMicros(row.getLong(1), row.getLong(2)))
        .list();
  }

  private static void moveSamples(Handle handle, long tripKey) {
    SegmentRows rows = new SegmentRows(tripKey);
    SegmentBuilder samples = new SegmentBuilder();
    List<Long> channels = channelKeys(handle, tripKey);
    long[] firstSample = {0};
    ofTrip(handle, "selectOldSamples", tripKey)
        .map(
            (row, context) ->
                new OldSample(
                    channels.indexOf(row.getLong("channel_key")),
                    row.getLong("time_micros"),
                    row.getDouble("value")))
        .forEach(
            sample -> {
              samples.add(sample.channel, sample.timeMicros, sample.value);
              if (samples.size() == TripWriter.LONG_SEGMENT) {
                rows.insertLong(handle, firstSample[0], samples);
                firstSample[0] += samples.size();
                samples.clear();
              }
            });
    if (samples.size() > 0) {
      rows.insertLong(handle, firstSample[0], samples);
    }
  }

  /**
   * Samples and events shared one sequence: an event's number less the events before is samples.
   */
  private static void moveEvents(Handle handle, long tripKey) {
    List<OldEvent> events = new ArrayList<>();
    ofTrip(handle, "selectOldEvents", tripKey)
        .map(
            (row, context) ->
                new OldEvent(
                    row.getLong("sequence"),
                    row.getLong("time_micros"),
                    row.getString("kind"),
                    row.getString("detail")))
        .forEach(events::add);
    try (PreparedBatch batch = handle.prepareBatch(Sql.of("insertEvent"))) {
      for (int number = 0; number < events.size(); number++) {
        OldEvent event = events.get(number);
        batch
            .bind("tripKey", tripKey)
            .bind("sequence", number)
            .bind("afterSamples", event.sequence - number)
            .bind("timeMicros", event.timeMicros)
            .bind("kind", event.kind)
            .bind("detail", event.detail)
            .add();
      }
      batch.execute();
    }
  }

  private static Query ofTrip(Handle handle, String statement, long tripKey) {
    return handle.createQuery(Sql.of("sqlite.migration." + statement)).bind("tripKey", tripKey);
  }

  private record OldSample(int channel, long timeMicros, double value) {}

  private record OldEvent(long sequence, long timeMicros, String kind, String detail) {}
}
