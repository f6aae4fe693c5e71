package steadypull.cli;

import java.util.List;
import java.util.Optional;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;
import steadypull.vehicle.Vehicle;

/** The vehicles of a library as part of a sentence. */
final class KnownVehicles {
  private KnownVehicles() {}

  /** A vehicle of the library. */
  static Vehicle named(SteadypullCommand main, String name)
      throws LibraryException, CommandFailure {
    try (TripLibrary library = main.openLibraryToRead()) {
      Optional<Vehicle> known = library.vehicle(name);
      if (known.isEmpty()) {
        throw new CommandFailure(
            "Could not judge as for \"%s\": the library in %s knows %s."
                .formatted(name, main.libraryFolder(), of(library.vehicleNames())));
      }
      return known.get();
    }
  }

  static String of(List<String> names) {
    return names.isEmpty() ? "no vehicle yet" : String.join(", ", names);
  }
}
