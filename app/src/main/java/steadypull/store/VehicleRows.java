package steadypull.store;

import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleJson;

/** The vehicles of a library as rows. Inside somebody else's transaction. */
final class VehicleRows {
  private VehicleRows() {}

  static Optional<String> file(Handle handle, String name) {
    return handle
        .createQuery(Sql.of("selectVehicle"))
        .bind("name", name)
        .mapTo(String.class)
        .findOne();
  }

  static List<String> names(Handle handle) {
    return handle.createQuery(Sql.of("selectVehicleNames")).mapTo(String.class).list();
  }

  /** What was learnt of a vehicle lies elsewhere. */
  static void save(Handle handle, Vehicle vehicle) {
    save(handle, vehicle.name(), VehicleJson.write(vehicle.withConfigurations(List.of())));
  }

  static void save(Handle handle, String name, String vehicleFile) {
    handle
        .createUpdate(Sql.of("saveVehicle"))
        .bind("name", name)
        .bind("vehicleFile", vehicleFile)
        .execute();
  }

  static Optional<String> evidence(Handle handle, String name) {
    return handle
        .createQuery(Sql.of("selectSensorEvidence"))
        .bind("name", name)
        .mapTo(String.class)
        .findOne();
  }

  static void keepEvidence(Handle handle, String name, String evidence) {
    handle
        .createUpdate(Sql.of("updateSensorEvidence"))
        .bind("name", name)
        .bind("evidence", evidence)
        .execute();
  }

  /** The vehicle as it was when a trip began; empty if there is no such trip. */
  static Optional<String> ofTrip(Handle handle, String tripId) {
    return handle
        .createQuery(Sql.of("selectVehicleOfTrip"))
        .bind("id", tripId)
        .mapTo(String.class)
        .findOne();
  }
}
