package steadypull.store;

import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import steadypull.vehicle.Configuration;

/**
 * A vehicle's file as it is kept, and what its trips have taught. Immutable.
 *
 * @param file JSON
 * @param configurations how it was fitted, in order, with what was learnt
 */
record KeptVehicle(String file, List<Configuration> configurations) {
  KeptVehicle {
    configurations = List.copyOf(configurations);
  }

  /** The vehicle of that name; inside somebody else's transaction. */
  static Optional<KeptVehicle> find(Handle handle, String name) {
    return VehicleRows.file(handle, name)
        .map(
            file ->
                new KeptVehicle(
                    file,
                    Configuration.taught(
                        HeatRows.configurations(handle, name), HeatRows.lessons(handle, name))));
  }
}
