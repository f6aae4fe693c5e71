package steadypull.drive;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import steadypull.store.TripEvent;
import steadypull.vehicle.TroubleCodes;

/** Reads the trouble codes of a kept trip from its events, in their order. One thread. */
public final class CodesOfTrip implements Function<TripEvent, Optional<TroubleCodes>> {
  private final DiagnosisLog log = new DiagnosisLog(Locale.ROOT);

  /** The codes as they are known from this event on; empty if it tells nothing of them. */
  @Override
  public Optional<TroubleCodes> apply(TripEvent event) {
    if (event.kind() != TripEvent.Kind.CODES) {
      return Optional.empty();
    }
    log.take(event);
    return Optional.of(log.codes());
  }
}
