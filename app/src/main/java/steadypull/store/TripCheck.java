package steadypull.store;

import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import steadypull.vehicle.VehicleFileException;
import steadypull.vehicle.VehicleJson;

/** Reads every trip of a library to its end and compares it with what its row says. One thread. */
final class TripCheck {
  private final Handle handle;
  private final List<String> findings = new ArrayList<>();

  private TripCheck(Handle handle) {
    this.handle = handle;
  }

  /** What is not as it should be, in words; inside somebody else's transaction. */
  static List<String> findings(Handle handle) {
    TripCheck check = new TripCheck(handle);
    for (TripSummary trip : new TripReader(handle).summaries("")) {
      check.check(trip);
    }
    return check.findings;
  }

  private void check(TripSummary trip) {
    try {
      long[] samples = {0};
      TripDamage damage =
          TripEntries.replay(
              handle,
              TripRow.find(handle, trip.id()).orElseThrow(),
              trip.channels(),
              entry -> {
                if (entry instanceof TripEntry.OfSample) {
                  samples[0]++;
                }
              });
      if (!damage.isNone()) {
        tell(
            trip,
            "%d samples%s cannot be read"
                .formatted(damage.samples(), damage.areEventsLost() ? " and some events" : ""));
      } else if (samples[0] != trip.samples()) {
        tell(trip, "expected %d samples, found %d".formatted(trip.samples(), samples[0]));
      }
      VehicleJson.read(VehicleRows.ofTrip(handle, trip.id()).orElse(""), "vehicle");
    } catch (JdbiException | VehicleFileException e) {
      tell(trip, String.valueOf(e.getMessage()).lines().findFirst().orElse(""));
    }
  }

  private void tell(TripSummary trip, String finding) {
    findings.add("trip " + trip.id() + ": " + finding);
  }
}
