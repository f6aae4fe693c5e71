package steadypull.vehicle.role;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import steadypull.channel.Channel;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.role.RoleFinding.Confidence;

/**
 * What the evidence says about where the sensors of a vehicle sit. Immutable.
 *
 * @param findings one for each channel in question, in the order of the channel table
 * @param suspects sensors that are not to be believed; one that is stuck stands in no finding
 */
public record RoleSurvey(List<RoleFinding> findings, List<Suspect> suspects) {
  /** "A minute of boost": enough seconds to compare means by (estimated). */
  static final double ENOUGH_SECONDS = 60;

  public RoleSurvey {
    findings = List.copyOf(findings);
    suspects = List.copyOf(suspects);
  }

  /**
   * Makes findings of evidence. The same evidence gives the same findings.
   *
   * @param layout how the charge air is said to be cooled
   */
  public static RoleSurvey of(SensorEvidence evidence, CoolingLayout layout) {
    List<Suspect> suspects = suspects(evidence);
    List<RoleFinding> findings = new ArrayList<>();
    findings.addAll(WaterPlaces.findings(moving(evidence.in(Medium.WATER)), layout));
    findings.addAll(AirPlaces.findings(moving(evidence.in(Medium.AIR))));
    findings.addAll(ExhaustPlaces.findings(moving(evidence.in(Medium.EXHAUST))));
    findings.replaceAll(finding -> doubted(finding, suspects));
    return new RoleSurvey(findings, suspects);
  }

  /** The findings that a person could confirm. */
  public List<RoleFinding.Proposed> proposals() {
    return findings.stream()
        .filter(RoleFinding.Proposed.class::isInstance)
        .map(RoleFinding.Proposed.class::cast)
        .toList();
  }

  private static List<Suspect> suspects(SensorEvidence evidence) {
    List<Suspect> suspects = new ArrayList<>();
    evidence
        .sensors()
        .forEach(
            (key, sensor) -> {
              if (sensor.isStuck(ENOUGH_SECONDS)) {
                suspects.add(new Suspect(key, new Suspect.Stuck(sensor.boost().celsius())));
              } else if (sensor.isOffAfterRest()) {
                double kelvin = sensor.soakKelvin().orElseThrow();
                suspects.add(new Suspect(key, new Suspect.OffAfterRest(kelvin)));
              }
            });
    return suspects;
  }

  private static Map<String, SensorRecord> moving(Map<String, SensorRecord> sensors) {
    Map<String, SensorRecord> moving = new LinkedHashMap<>(sensors);
    moving.values().removeIf(sensor -> sensor.isStuck(ENOUGH_SECONDS));
    return moving;
  }

  /** A sensor that reads wrong still tells its place, but not beyond doubt. */
  private static RoleFinding doubted(RoleFinding finding, List<Suspect> suspects) {
    return switch (finding) {
      case RoleFinding.Proposed(Channel channel, String key, Confidence _, Reason reason)
          when suspects.stream().anyMatch(suspect -> suspect.signalKey().equals(key)) ->
          new RoleFinding.Proposed(channel, key, Confidence.LIKELY, reason);
      case RoleFinding.Proposed proposed -> proposed;
      case RoleFinding.CannotTell unknown -> unknown;
    };
  }

  /** Those that were seen under boost for long enough, the likelier first. */
  static Map<String, SensorRecord> underBoost(Map<String, SensorRecord> sensors) {
    Map<String, SensorRecord> seen = new LinkedHashMap<>(sensors);
    seen.values().removeIf(sensor -> sensor.boost().seconds() < ENOUGH_SECONDS);
    return seen;
  }

  /** What is missing where none was seen under boost for long enough. */
  static Missing unseen(Map<String, SensorRecord> sensors) {
    return sensors.isEmpty()
        ? new Missing.NoSensor()
        : new Missing.MoreBoost(
            sensors.values().stream()
                .mapToDouble(sensor -> sensor.boost().seconds())
                .max()
                .orElse(0));
  }
}
