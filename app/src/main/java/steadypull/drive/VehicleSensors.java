package steadypull.drive;

import java.util.List;
import java.util.Objects;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;
import steadypull.vehicle.SignalSource;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.role.RoleFinding;
import steadypull.vehicle.role.RoleSurvey;

/**
 * A vehicle and what its drives have shown of its sensors. Immutable.
 *
 * @param vehicle with the roles that were confirmed
 * @param survey findings of all drives up to now
 */
public record VehicleSensors(Vehicle vehicle, RoleSurvey survey) {
  public VehicleSensors {
    Objects.requireNonNull(vehicle);
    Objects.requireNonNull(survey);
  }

  /**
   * Reads what a library knows.
   *
   * @throws LibraryException if the library cannot be read
   */
  public static VehicleSensors of(Vehicle vehicle, TripLibrary library) throws LibraryException {
    return new VehicleSensors(
        vehicle, RoleSurvey.of(library.sensorEvidence(vehicle.name()), vehicle.layout()));
  }

  /** Whether a person has said the same. */
  public boolean isConfirmed(RoleFinding.Proposed proposed) {
    return vehicle
        .source(proposed.channel())
        .filter(source -> source.signalKey().equals(proposed.signalKey()))
        .isPresent();
  }

  /** Proposals that nobody has confirmed yet. */
  public List<RoleFinding.Proposed> unconfirmed() {
    return survey.proposals().stream().filter(proposed -> !isConfirmed(proposed)).toList();
  }

  /** The same with proposals confirmed; they hold from the next drive on, once it is saved. */
  public VehicleSensors confirming(List<RoleFinding.Proposed> proposals) {
    Vehicle changed = vehicle;
    for (RoleFinding.Proposed proposed : proposals) {
      changed = changed.withSource(new SignalSource(proposed.channel().id(), proposed.signalKey()));
    }
    return new VehicleSensors(changed, survey);
  }
}
