package steadypull.drive;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import steadypull.store.TripEvent;

/**
 * Reads from the events of a kept trip with which software and data its engine's control unit
 * works. One thread, one trip.
 */
public final class CalibrationsOfTrip implements Function<TripEvent, List<String>> {
  /** The engine's by ISO 15765-4: 7E8 with 11 bits, else the last byte 10 (from memory). */
  private static final String SHORT_HEADER = "7E8";

  private static final String ENGINE = "10";

  private final DiagnosisLog log = new DiagnosisLog(Locale.ROOT);

  /** The ids as they are known from this event on; empty if none was told so far. */
  @Override
  public List<String> apply(TripEvent event) {
    if (event.kind() == TripEvent.Kind.VEHICLE) {
      log.take(event);
    }
    return log.diagnosis().controlUnits().stream()
        .filter(unit -> isEngine(unit.address()))
        .flatMap(unit -> unit.calibrations().stream())
        .toList();
  }

  private static boolean isEngine(String address) {
    return address.equals(SHORT_HEADER) || address.endsWith(ENGINE);
  }
}
