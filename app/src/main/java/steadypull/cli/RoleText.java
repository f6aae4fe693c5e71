package steadypull.cli;

import steadypull.vehicle.Vehicle;
import steadypull.vehicle.role.RoleFinding;
import steadypull.vehicle.role.RoleSurvey;
import steadypull.vehicle.role.RoleWords;

/** Where the sensors of a vehicle seem to sit, as lines of text. */
final class RoleText {
  private RoleText() {}

  static String of(Vehicle vehicle, RoleSurvey survey, RoleWords words) {
    StringBuilder text = new StringBuilder();
    survey.findings().forEach(finding -> text.append(line(vehicle, finding, words)));
    survey
        .suspects()
        .forEach(suspect -> text.append(words.suspicion(suspect)).append(System.lineSeparator()));
    if (survey.proposals().stream().anyMatch(proposed -> !isConfirmed(vehicle, proposed))) {
      text.append(
          "Confirm all with --confirm-roles, or one with --role CHANNEL=SIGNAL; it holds from the next drive on.%n"
              .formatted());
    }
    return text.toString();
  }

  private static String line(Vehicle vehicle, RoleFinding finding, RoleWords words) {
    return "%s: %s%n    %s%n"
        .formatted(finding.channel().id(), told(vehicle, finding, words), words.because(finding));
  }

  private static String told(Vehicle vehicle, RoleFinding finding, RoleWords words) {
    return switch (finding) {
      case RoleFinding.Proposed proposed ->
          "%s, %s%s"
              .formatted(
                  words.sensor(proposed.signalKey()),
                  words.confidence(proposed.confidence()),
                  standing(vehicle, proposed));
      case RoleFinding.CannotTell _ -> "cannot tell";
    };
  }

  private static String standing(Vehicle vehicle, RoleFinding.Proposed proposed) {
    return vehicle
        .source(proposed.channel())
        .map(
            source ->
                source.signalKey().equals(proposed.signalKey())
                    ? ", confirmed"
                    : ", but %s is set".formatted(source.signalKey()))
        .orElse("");
  }

  private static boolean isConfirmed(Vehicle vehicle, RoleFinding.Proposed proposed) {
    return vehicle
        .source(proposed.channel())
        .filter(source -> source.signalKey().equals(proposed.signalKey()))
        .isPresent();
  }
}
