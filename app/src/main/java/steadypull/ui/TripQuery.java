package steadypull.ui;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import steadypull.store.TripSummary;

/**
 * Which trips somebody wants to see. Immutable.
 *
 * @param text what a trip has to mention; blank: anything
 * @param vehicle name of its vehicle; empty: any
 * @param tag a tag of it; empty: any
 */
record TripQuery(String text, Optional<String> vehicle, Optional<String> tag) {
  /** Every trip. */
  static final TripQuery ALL = new TripQuery("", Optional.empty(), Optional.empty());

  TripQuery {
    Objects.requireNonNull(vehicle);
    Objects.requireNonNull(tag);
    text = text.strip();
  }

  TripQuery withText(String changed) {
    return new TripQuery(changed, vehicle, tag);
  }

  TripQuery withVehicle(Optional<String> changed) {
    return new TripQuery(text, changed, tag);
  }

  TripQuery withTag(Optional<String> changed) {
    return new TripQuery(text, vehicle, changed);
  }

  /** Those of the wanted vehicle with the wanted tag, in the same order. */
  List<TripSummary> filter(List<TripSummary> trips) {
    return trips.stream().filter(this::isWanted).toList();
  }

  private boolean isWanted(TripSummary trip) {
    return vehicle.map(trip.vehicleName()::equals).orElse(true)
        && tag.map(trip.details().tags()::contains).orElse(true);
  }
}
