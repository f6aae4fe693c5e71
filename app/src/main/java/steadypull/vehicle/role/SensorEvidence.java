package steadypull.vehicle.role;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;

/**
 * What has been seen of a vehicle's temperature sensors, over all its drives. Immutable; {@link
 * SensorEvidenceJson} is its text form.
 *
 * @param sensors what is remembered of each sensor, by signal key
 */
public record SensorEvidence(Map<String, SensorRecord> sensors) {
  /** Only signals whose place is in question have a record. */
  public SensorEvidence {
    for (String key : sensors.keySet()) {
      if (Medium.of(key).isEmpty()) {
        throw new IllegalArgumentException("No sensor's place is in question at " + key);
      }
    }
    sensors = Collections.unmodifiableMap(new TreeMap<>(sensors));
  }

  /** A vehicle of which nothing has been seen. */
  public static SensorEvidence none() {
    return new SensorEvidence(Map.of());
  }

  /** The sensors in a medium, the likelier first. */
  Map<String, SensorRecord> in(Medium medium) {
    Map<String, SensorRecord> found = new LinkedHashMap<>();
    for (String key : medium.signals()) {
      SensorRecord sensor = sensors.get(key);
      if (sensor != null) {
        found.put(key, sensor);
      }
    }
    return found;
  }
}
