package steadypull.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import steadypull.channel.Channel;
import steadypull.store.TripSummary.Gap;

/** Reads what a list of trips shows. One handle, one thread. */
final class TripReader {
  private final Handle handle;

  TripReader(Handle handle) {
    this.handle = handle;
  }

  /** The trips whose id begins so, newest first; an empty beginning gives all. */
  List<TripSummary> summaries(String prefix) {
    // Most trips of a vehicle tell the same channels: each list is put together once.
    Map<Long, Channel> channels = channels();
    Map<String, List<Channel>> lists = new HashMap<>();
    Function<String, List<Channel>> known =
        keys -> lists.computeIfAbsent(keys, each -> known(channels, each));
    return handle
        .createQuery(Sql.of("selectTrips"))
        .bind("prefix", prefix)
        .map((row, context) -> summary(row, known))
        .list();
  }

  List<String> ids() {
    return handle.createQuery(Sql.of("selectTripIds")).mapTo(String.class).list();
  }

  private Map<Long, Channel> channels() {
    return handle
        .createQuery(Sql.of("selectChannels"))
        .map((row, context) -> Map.entry(row.getLong("channel_key"), channel(row)))
        .collectToMap(Map.Entry::getKey, Map.Entry::getValue);
  }

  private static TripSummary summary(ResultSet row, Function<String, List<Channel>> channels)
      throws SQLException {
    return new TripSummary(
        row.getString("id"),
        row.getString("origin"),
        row.getString("vehicle_name"),
        Instant.EPOCH.plus(row.getLong("start_epoch_micros"), ChronoUnit.MICROS),
        offset(row),
        seconds(row.getLong("reached_micros")),
        number(row, "distance_metres"),
        row.getLong("sample_count"),
        channels.apply(row.getString("channel_keys")),
        gaps(row),
        row.getInt("sealed") == 1,
        details(row),
        row.getString("source"),
        new LinkIdentity(
            row.getString("adapter"),
            row.getString("protocol"),
            row.getString("vehicle_number_hash")),
        row.getString("software_version"));
  }

  private static TripDetails details(ResultSet row) throws SQLException {
    String tags = row.getString("tags");
    return new TripDetails(
        row.getString("label"),
        row.getString("note"),
        tags.isEmpty() ? List.of() : tags.lines().toList(),
        row.getString("fitted"),
        row.getString("outside"),
        number(row, "outside_celsius"));
  }

  /** The silence after the last sample is a gap too; it still grows, so it is not stored. */
  private static List<Gap> gaps(ResultSet row) throws SQLException {
    List<Gap> gaps = new ArrayList<>();
    for (TripTally.GapMicros gap : RowText.gaps(row.getString("gaps"))) {
      gaps.add(new Gap(seconds(gap.fromMicros()), seconds(gap.toMicros())));
    }
    long from = row.getLong("last_sample_micros");
    long to = row.getLong("reached_micros");
    if (to - from > TripTally.GAP_MICROS) {
      gaps.add(new Gap(seconds(from), seconds(to)));
    }
    return gaps;
  }

  private static OptionalDouble number(ResultSet row, String column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  private static Optional<ZoneOffset> offset(ResultSet row) throws SQLException {
    int seconds = row.getInt("start_offset_seconds");
    return row.wasNull() ? Optional.empty() : Optional.of(ZoneOffset.ofTotalSeconds(seconds));
  }

  private static Channel channel(ResultSet row) throws SQLException {
    return new Channel(row.getString("id"), row.getString("unit"));
  }

  private static List<Channel> known(Map<Long, Channel> channels, String keys) {
    List<Channel> known = new ArrayList<>();
    for (long key : RowText.keys(keys)) {
      Channel channel = channels.get(key);
      if (channel == null) {
        throw new DamagedTripException(
            "expected a channel of the number " + key + ", found none in the list of channels");
      }
      known.add(channel);
    }
    return List.copyOf(known);
  }

  private static double seconds(long micros) {
    return micros / 1e6;
  }
}
