package steadypull.cli;

import steadypull.drive.VehicleSensors;
import steadypull.vehicle.role.RoleFinding;
import steadypull.vehicle.role.RoleWords;

/** Where the sensors of a vehicle seem to sit, as lines of text. */
final class RoleText {
  private RoleText() {}

  static String of(VehicleSensors sensors, RoleWords words) {
    StringBuilder text = new StringBuilder();
    sensors.survey().findings().forEach(finding -> text.append(line(sensors, finding, words)));
    sensors
        .survey()
        .suspects()
        .forEach(suspect -> text.append(words.suspicion(suspect)).append(System.lineSeparator()));
    if (!sensors.unconfirmed().isEmpty()) {
      text.append(
          "Confirm all with --confirm-roles, or one with --role CHANNEL=SIGNAL; it holds from the next drive on.%n"
              .formatted());
    }
    return text.toString();
  }

  private static String line(VehicleSensors sensors, RoleFinding finding, RoleWords words) {
    return "%s: %s%n    %s%n"
        .formatted(finding.channel().id(), told(sensors, finding, words), words.because(finding));
  }

  private static String told(VehicleSensors sensors, RoleFinding finding, RoleWords words) {
    return switch (finding) {
      case RoleFinding.Proposed proposed ->
          "%s, %s%s"
              .formatted(
                  words.sensor(proposed.signalKey()),
                  words.confidence(proposed.confidence()),
                  standing(sensors, proposed));
      case RoleFinding.CannotTell _ -> "cannot tell";
    };
  }

  private static String standing(VehicleSensors sensors, RoleFinding.Proposed proposed) {
    if (sensors.isConfirmed(proposed)) {
      return ", confirmed";
    }
    return sensors
        .vehicle()
        .source(proposed.channel())
        .map(source -> ", but %s is set".formatted(source.signalKey()))
        .orElse("");
  }
}
