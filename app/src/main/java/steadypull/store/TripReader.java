package steadypull.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import steadypull.channel.Channel;
import steadypull.channel.Sample;
import steadypull.store.TripSummary.Gap;

/** Reads summaries and entries. One handle, one thread. */
final class TripReader {
  private final Handle handle;

  TripReader(Handle handle) {
    this.handle = handle;
  }

  /** The trips whose id begins so, newest first; an empty beginning gives all. */
  List<TripSummary> summaries(String prefix) {
    Map<Long, List<Channel>> channels = channels(prefix);
    Map<Long, List<Gap>> gaps = gaps(prefix);
    return handle
        .createQuery(Sql.of("selectTrips"))
        .bind("prefix", prefix)
        .map((row, context) -> summary(row, channels, gaps))
        .list();
  }

  List<String> ids() {
    return handle.createQuery(Sql.of("selectTripIds")).mapTo(String.class).list();
  }

  void replay(long tripKey, Consumer<TripEntry> consumer) {
    Map<Long, Channel> channels = allChannels();
    handle
        .createQuery(Sql.of("selectEntries"))
        .bind("tripKey", tripKey)
        .map((row, context) -> entry(row, channels))
        .forEach(consumer);
  }

  private Map<Long, List<Channel>> channels(String prefix) {
    Map<Long, Channel> all = allChannels();
    Map<Long, List<Channel>> byTrip = new HashMap<>();
    handle
        .createQuery(Sql.of("selectTripChannels"))
        .bind("prefix", prefix)
        .map((row, context) -> new OfTrip<>(row.getLong(1), known(all, row.getLong(2))))
        .forEach(found -> found.addTo(byTrip));
    return byTrip;
  }

  private Map<Long, List<Gap>> gaps(String prefix) {
    Map<Long, List<Gap>> byTrip = new HashMap<>();
    handle
        .createQuery(Sql.of("selectGaps"))
        .bind("prefix", prefix)
        .map((row, context) -> new OfTrip<>(row.getLong("trip_key"), gap(row)))
        .forEach(found -> found.addTo(byTrip));
    return byTrip;
  }

  private Map<Long, Channel> allChannels() {
    return handle
        .createQuery(Sql.of("selectChannels"))
        .map((row, context) -> Map.entry(row.getLong("channel_key"), channel(row)))
        .collectToMap(Map.Entry::getKey, Map.Entry::getValue);
  }

  private static TripSummary summary(
      ResultSet row, Map<Long, List<Channel>> channels, Map<Long, List<Gap>> gaps)
      throws SQLException {
    long key = row.getLong("trip_key");
    return new TripSummary(
        row.getString("id"),
        row.getString("vehicle_name"),
        Instant.EPOCH.plus(row.getLong("start_epoch_micros"), ChronoUnit.MICROS),
        seconds(row.getLong("reached_micros")),
        distance(row),
        row.getLong("sample_count"),
        channels.getOrDefault(key, List.of()),
        withTail(gaps.getOrDefault(key, List.of()), row),
        row.getInt("sealed") == 1,
        row.getString("label"));
  }

  /** The silence after the last sample is a gap too; it still grows, so it is not stored. */
  private static List<Gap> withTail(List<Gap> gaps, ResultSet row) throws SQLException {
    long from = row.getLong("last_sample_micros");
    long to = row.getLong("reached_micros");
    if (to - from <= TripTally.GAP_MICROS) {
      return gaps;
    }
    List<Gap> all = new ArrayList<>(gaps);
    all.add(new Gap(seconds(from), seconds(to)));
    return all;
  }

  private static OptionalDouble distance(ResultSet row) throws SQLException {
    double metres = row.getDouble("distance_metres");
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(metres);
  }

  private static Channel channel(ResultSet row) throws SQLException {
    return new Channel(row.getString("id"), row.getString("unit"));
  }

  private static Gap gap(ResultSet row) throws SQLException {
    return new Gap(seconds(row.getLong("from_micros")), seconds(row.getLong("to_micros")));
  }

  private static TripEntry entry(ResultSet row, Map<Long, Channel> channels) throws SQLException {
    long time = row.getLong("time_micros");
    String kind = row.getString("kind");
    if (kind == null) {
      Channel channel = known(channels, row.getLong("channel_key"));
      return new TripEntry.OfSample(new Sample(channel, time, row.getDouble("value")));
    }
    TripEvent.Kind known =
        TripEvent.Kind.of(kind)
            .orElseThrow(() -> new SQLException("An event has the unknown kind \"" + kind + "\""));
    return new TripEntry.OfEvent(new TripEvent(time, known, row.getString("detail")));
  }

  private static Channel known(Map<Long, Channel> channels, long key) throws SQLException {
    Channel channel = channels.get(key);
    if (channel == null) {
      throw new SQLException("The channel number " + key + " is not in the list of channels");
    }
    return channel;
  }

  private static double seconds(long micros) {
    return micros / 1e6;
  }

  private record OfTrip<T>(long tripKey, T value) {
    void addTo(Map<Long, List<T>> byTrip) {
      byTrip.computeIfAbsent(tripKey, key -> new ArrayList<>()).add(value);
    }
  }
}
