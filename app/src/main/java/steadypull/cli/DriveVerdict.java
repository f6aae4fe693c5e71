package steadypull.cli;

import java.util.Optional;
import steadypull.drive.DriveOutcome;

/** Whether a drive that has ended did its task, which is to keep all that was heard. */
final class DriveVerdict {
  private DriveVerdict() {}

  /** Why the task failed, in clear words; empty if it did not. */
  static Optional<String> failure(DriveOutcome outcome) {
    Optional<String> trip = outcome.lastTripId();
    if (trip.isEmpty()) {
      return Optional.of(
          outcome.unkept().map(DriveVerdict::refused).orElseGet(() -> silent(outcome)));
    }
    return outcome.unkept().map(reason -> cutShort(trip.get(), reason));
  }

  private static String refused(String reason) {
    return "No trip was kept: " + reason;
  }

  private static String silent(DriveOutcome outcome) {
    return "No trip was kept, for nothing was heard from the vehicle."
        + outcome.linkTrouble().map(trouble -> " " + trouble).orElse("");
  }

  private static String cutShort(String tripId, String reason) {
    return "The end of trip %s is missing; \"steadypull trips\" shows how long it is. %s"
        .formatted(tripId, reason);
  }
}
