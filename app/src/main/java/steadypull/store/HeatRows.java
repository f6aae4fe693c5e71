package steadypull.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import steadypull.vehicle.Circuit;
import steadypull.vehicle.Configuration;
import steadypull.vehicle.HeatJson;
import steadypull.vehicle.LearntHeat;
import steadypull.vehicle.LessonOfTrip;
import steadypull.vehicle.TripHeat;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleFileException;

/**
 * How vehicles were fitted and what trips have told of their heat, as rows. Inside somebody else's
 * transaction.
 */
final class HeatRows {
  /** Nobody asks for more; a mean over trips does not remember them longer. */
  private static final int MOST_LESSONS = 200;

  private HeatRows() {}

  /** A trip that has ended and was not looked at yet. */
  record Waiting(String tripId, String origin, String vehicleName, Instant start) {}

  static int waitingCount(Handle handle) {
    return handle.createQuery(Sql.of("countTripsToTell")).mapTo(Integer.class).one();
  }

  /** The oldest of them that is not left out. */
  static Optional<Waiting> firstWaiting(Handle handle, UnlearntTrips leftOut) {
    return handle
        .createQuery(Sql.of("selectTripToTell"))
        .map(
            (row, _) ->
                new Waiting(
                    row.getString("id"),
                    row.getString("origin"),
                    row.getString("vehicle_name"),
                    instant(row.getLong("start_epoch_micros"))))
        .list()
        .stream()
        .filter(waiting -> !leftOut.has(waiting.origin()))
        .findFirst();
  }

  /** Keeps what a trip has told; false if it was looked at before: then that stays. */
  static boolean told(Handle handle, Waiting trip, TripHeat heat) {
    return told(handle, trip.origin(), trip.vehicleName(), trip.start(), HeatJson.write(heat));
  }

  static boolean told(
      Handle handle, String origin, String vehicleName, Instant start, String told) {
    return handle
            .createUpdate(Sql.of("insertTripHeat"))
            .bind("origin", origin)
            .bind("name", vehicleName)
            .bind("startEpochMicros", micros(start))
            .bind("told", told)
            .execute()
        > 0;
  }

  /** What the latest trips have told, oldest first; a row that is damaged is left out. */
  static List<LessonOfTrip> lessons(Handle handle, String vehicleName) {
    return handle
        .createQuery(Sql.of("selectTripHeat"))
        .bind("name", vehicleName)
        .bind("most", MOST_LESSONS)
        .map((row, _) -> lesson(row))
        .list()
        .stream()
        .flatMap(Optional::stream)
        .toList();
  }

  private static Optional<LessonOfTrip> lesson(ResultSet row) throws SQLException {
    try {
      return Optional.of(
          new LessonOfTrip(
              instant(row.getLong("start_epoch_micros")),
              HeatJson.readTrip(row.getString("told"))));
    } catch (VehicleFileException damaged) {
      return Optional.empty();
    }
  }

  /** How a vehicle was fitted, in order, without what its trips have taught. */
  static List<Configuration> configurations(Handle handle, String vehicleName) {
    return handle
        .createQuery(Sql.of("selectConfigurations"))
        .bind("name", vehicleName)
        .map(
            (row, _) ->
                configuration(
                    row.getString("fitted"),
                    row.getLong("since_epoch_micros"),
                    row.getString("touched"),
                    row.getString("learnt")))
        .list()
        .stream()
        .flatMap(Optional::stream)
        .toList();
  }

  /** One that is damaged is left out; what cannot be read of what it knows is not known. */
  static Optional<Configuration> configuration(
      String fitted, long sinceEpochMicros, String touched, String learnt) {
    Set<Circuit> circuits = new TreeSet<>();
    touched.lines().forEach(word -> Circuit.of(word).ifPresent(circuits::add));
    try {
      return Optional.of(
          new Configuration(fitted, instant(sinceEpochMicros), circuits, learnt(learnt)));
    } catch (IllegalArgumentException damaged) {
      return Optional.empty();
    }
  }

  private static LearntHeat learnt(String text) {
    try {
      return HeatJson.readLearnt(text);
    } catch (VehicleFileException damaged) {
      return LearntHeat.NOTHING;
    }
  }

  /** A vehicle as a trip of that start begins with it. */
  static Vehicle settingOut(Handle handle, Vehicle vehicle, Instant start) {
    return vehicle.withConfigurations(
        Configuration.settingOut(
            configurations(handle, vehicle.name()), lessons(handle, vehicle.name()), start));
  }

  /** Keeps a configuration in place of one that began at the same moment. */
  static void keep(Handle handle, String vehicleName, Configuration configuration) {
    handle
        .createUpdate(Sql.of("insertConfiguration"))
        .bind("name", vehicleName)
        .bind("fitted", configuration.fitted())
        .bind("sinceEpochMicros", micros(configuration.since()))
        .bind(
            "touched",
            configuration.touched().stream().map(Circuit::word).collect(Collectors.joining("\n")))
        .bind("learnt", HeatJson.write(configuration.learnt()))
        .execute();
  }

  static void deleteConfigurations(Handle handle, String vehicleName) {
    handle.createUpdate(Sql.of("deleteConfigurations")).bind("name", vehicleName).execute();
  }

  /**
   * Forgets what trips up to now have taught, and what they still could have.
   *
   * @return how many trips had taught something
   */
  static int forget(Handle handle, String vehicleName) {
    int trips = handle.createUpdate(Sql.of("forgetTripHeat")).bind("name", vehicleName).execute();
    handle.createUpdate(Sql.of("insertForgottenTripHeat")).bind("name", vehicleName).execute();
    handle.createUpdate(Sql.of("forgetConfigurationsHeat")).bind("name", vehicleName).execute();
    return trips;
  }

  private static long micros(Instant moment) {
    return ChronoUnit.MICROS.between(Instant.EPOCH, moment);
  }

  static Instant instant(long epochMicros) {
    return Instant.EPOCH.plus(epochMicros, ChronoUnit.MICROS);
  }
}
